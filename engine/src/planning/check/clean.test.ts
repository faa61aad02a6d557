import { describe, expect, it } from 'vitest'
import { check, checkPlan, isClean } from './check.ts'
import { compileProblem } from './compile.ts'
import { smallProblem } from './small-course.ts'
import { SMALL_UNPLANNED, smallFigures, smallTasks } from './small-plan.ts'

describe('a plan that keeps every rule', () => {
  it('is clean with all that it says of itself', () => {
    const plan = { tasks: [...smallTasks()], unplanned: SMALL_UNPLANNED, ...smallFigures() }
    expect(checkPlan(smallProblem(), plan)).toEqual([])
    expect(isClean(compileProblem(smallProblem()), plan)).toBe(true)
  })
  it('is clean as bare tasks written by hand', () => {
    expect(
      check(compileProblem(smallProblem()), { tasks: [...smallTasks()], unplanned: SMALL_UNPLANNED }),
    ).toEqual([])
  })
})
