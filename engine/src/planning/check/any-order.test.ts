import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanTask } from '../plan.ts'
import { BROKEN } from './broken-plans.ts'
import { check, isClean } from './check.ts'
import { compileProblem } from './compile.ts'
import { parseInstant } from './instant.ts'
import { smallProblem } from './small-course.ts'
import { SMALL_UNPLANNED, smallTasks, written } from './small-plan.ts'

const RUNS = { numRuns: 200, seed: 20260810 }

/** The same instants written with another offset each. */
const rewritten = (task: PlanTask, offsets: readonly [number, number]): PlanTask => {
  const minuteOf = (text: string): number => (parseInstant(text) - Date.UTC(2026, 7, 9, 23)) / 60_000
  return Number.isNaN(parseInstant(task.start))
    ? task
    : {
        ...task,
        start: written(minuteOf(task.start), offsets[0]),
        finish: written(minuteOf(task.finish), offsets[1]),
      }
}

const offset = fc.integer({ min: -12 * 60, max: 14 * 60 })

/** Tasks of the small plan whose finish is the start of another that needs them; read off the minutes there. */
const TIGHT = [
  ['set-corer', 'corer-a', 'core-a', 'collector-a', 'collect-a', 'core-b', 'collect-b', 'set-dresser'],
  ['dresser-bay-1', 'load-a1', 'dress-a1', 'dresser-bay-2', 'load-a2', 'dresser-a2', 'dress-a2'],
  ['dresser-bay-3', 'load-b1', 'dress-b1', 'mat-a', 'drag-a', 'roll-a', 'drag-b'],
].flat()

const later = (task: PlanTask, minutes: number): PlanTask => {
  const moved = (text: string): string =>
    written((parseInstant(text) - smallProblem().originMs) / 60_000 + minutes)
  return { ...task, start: moved(task.start), finish: moved(task.finish) }
}

describe('the way in which a plan is written', () => {
  const index = fc.integer({ min: 0, max: BROKEN.length - 1 })

  it('changes nothing: tasks in any order, each instant with any offset', () => {
    // One row of chance for each task; the small plan has 31, the longest broken one 33.
    const chances = fc.array(fc.tuple(fc.nat(), offset, offset), { minLength: 33, maxLength: 33 })
    fc.assert(
      fc.property(index, chances, (at, rows) => {
        const broken = BROKEN[at]
        if (broken === undefined) throw new Error('no such plan')
        const compiled = compileProblem(broken.problem)
        const shuffled = broken.tasks
          .map((task, place) => {
            const [key, forStart, forFinish] = rows[place] ?? [0, 0, 0]
            return { key, task: rewritten(task, [forStart, forFinish]) }
          })
          .sort((a, b) => a.key - b.key)
          .map(({ task }) => task)
        const { unplanned } = broken
        expect(check(compiled, { tasks: shuffled, unplanned })).toEqual(
          check(compiled, { tasks: [...broken.tasks], unplanned }),
        )
      }),
      RUNS,
    )
  })
})

describe('a task that has no minute to spare', () => {
  const compiled = compileProblem(smallProblem())

  it('is missed when it starts later by any number of minutes', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TIGHT), fc.integer({ min: 1, max: 600 }), (id, minutes) => {
        const tasks = smallTasks().map((task) => (task.id === id ? later(task, minutes) : task))
        expect(isClean(compiled, { tasks, unplanned: SMALL_UNPLANNED })).toBe(false)
      }),
      RUNS,
    )
  })
})
