import { describe, expect, it } from 'vitest'
import { FIGURES_BROKEN } from './broken-figures.ts'
import { checkPlan } from './check.ts'
import { smallProblem } from './small-course.ts'
import { SMALL_UNPLANNED, smallFigures, smallTasks } from './small-plan.ts'

describe('figures that a plan states of itself', () => {
  for (const { title, figures, told } of FIGURES_BROKEN) {
    it(`[figureWrong] names ${title}, and nothing else`, () => {
      const found = checkPlan(smallProblem(), {
        tasks: [...smallTasks()],
        unplanned: SMALL_UNPLANNED,
        ...figures,
      })
      expect(found.map(({ rule, green, at, by }) => ({ rule, green, at, by }))).toEqual([
        { rule: 'figureWrong', ...told },
      ])
    })
  }

  it('[figureWrong] counts the broken rules of a plan that calls itself feasible', () => {
    const figures = { ...smallFigures(), feasible: true }
    const found = checkPlan(smallProblem(), { tasks: [...smallTasks()], unplanned: [], ...figures })
    expect(found.map(({ rule, by }) => [rule, by])).toEqual([
      ['notAccountedFor', 1],
      ['figureWrong', 1],
    ])
  })

  it('lets tonnes be rounded to the kilogram and rows stand in any order', () => {
    const figures = smallFigures()
    const found = checkPlan(smallProblem(), {
      tasks: [...smallTasks()],
      unplanned: SMALL_UNPLANNED,
      ...figures,
      openings: figures.openings.toReversed(),
      posts: figures.posts.toReversed(),
      days: figures.days.toReversed(),
      sand: figures.sand.map((row) => ({ ...row, lowT: row.lowT + 0.0004 })).reverse(),
    })
    expect(found).toEqual([])
  })
})
