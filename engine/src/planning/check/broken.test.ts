import { describe, expect, it } from 'vitest'
import { RULES } from '../rules.ts'
import { BROKEN } from './broken-plans.ts'
import { check, isClean } from './check.ts'
import { compileProblem } from './compile.ts'
import { FIGURES_BROKEN } from './broken-figures.ts'
import { written } from './small-plan.ts'

describe('a plan broken in one place', () => {
  for (const { rule, title, problem, tasks, unplanned, pins = [], told } of BROKEN) {
    it(`[${rule}] names ${title}, when, by how much, and nothing else`, () => {
      const compiled = compileProblem(problem)
      const plan = { tasks: [...tasks], unplanned, pins }
      expect(check(compiled, plan)).toEqual(
        told.map(([green, atMin, by, ids]) => ({
          rule,
          green,
          at: atMin === null ? null : written(atMin),
          by,
          tasks: ids,
        })),
      )
      expect(isClean(compiled, plan)).toBe(false)
    })
  }

  it('provokes every rule there is', () => {
    // What goes against a record takes a plan made in the middle of the work: `replanned.test.ts`.
    const provoked = new Set(
      [...BROKEN, ...FIGURES_BROKEN, { rule: 'againstRecord' }].map(({ rule }) => rule),
    )
    expect(RULES.filter((rule) => !provoked.has(rule))).toEqual([])
  })
})
