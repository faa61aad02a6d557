import { solve } from '@swardwright/engine'
import { describe, expect, it } from 'vitest'
import type { Engine, Expression, Interval, Literal } from './greens-engine.ts'
import { beginAt } from './greens-hint.ts'
import { weekModel } from './greens-model.ts'
import { bareWeek, weeksOf } from './greens-weeks.ts'

/** A sum that knows its value under the hints: `NaN` while a variable of it has none. */
type Sum = Expression & { readonly value: () => number }

type Stretch = Interval & {
  readonly start: () => number
  readonly end: () => number
  readonly isThere: () => boolean
}

const sumOf = (value: () => number): Sum => ({
  value,
  plus: (other) => sumOf(() => value() + valueOf(other)),
  times: (by) => sumOf(() => value() * by),
})

const valueOf = (one: Expression | number): number => (typeof one === 'number' ? one : (one as Sum).value())

const isWithin = (value: number, spans: readonly number[]): boolean =>
  spans.some((from, at) => at % 2 === 0 && value >= from && value <= (spans[at + 1] ?? -1))

/** An engine that solves nothing: it tells which constraints the hints break, a variable without a hint breaking all that it is in. */
const judgeEngine = () => {
  const rules: (readonly [string, () => boolean])[] = []
  const hints = new Map<Expression, number>()
  const variable = (name: string, spans: readonly number[]): Literal => {
    const one: Literal = { ...sumOf(() => hints.get(one) ?? Number.NaN), literalIndex: 0 }
    rules.push([name, () => isWithin(valueOf(one), spans)])
    return one
  }
  const stretch = (start: Expression | number, size: Expression | number, present?: Literal): Stretch => ({
    index: 0,
    start: () => valueOf(start),
    end: () => valueOf(start) + valueOf(size),
    isThere: () => present === undefined || valueOf(present) === 1,
  })
  class CpModel {
    newIntVarFromDomain = (domain: unknown, name: string) =>
      variable(name, (domain as readonly number[][]).flat())
    newIntVar = (least: number, most: number, name: string) => variable(name, [least, most])
    newBoolVar = (name: string) => variable(name, [0, 0, 1, 1])
    newFixedSizeIntervalVar = (start: Expression | number, size: number) => stretch(start, size)
    newIntervalVar = (start: Expression, size: Expression) => stretch(start, size)
    newOptionalFixedSizeIntervalVar = (start: Expression, size: number, present: Literal) =>
      stretch(start, size, present)
    newOptionalIntervalVar = (start: Expression, size: Expression, _end: Expression, present: Literal) =>
      stretch(start, size, present)
    addLinearConstraint = (sum: Expression, least: number, most: number, domain?: readonly number[]) => {
      let only: Literal | undefined
      rules.push([
        'sum',
        () =>
          only !== undefined && valueOf(only) === 0 ? true : isWithin(valueOf(sum), domain ?? [least, most]),
      ])
      return {
        onlyEnforceIf: (literal: Literal) => {
          only = literal
        },
      }
    }
    addNoOverlap = (all: readonly Interval[]) => {
      rules.push([
        'no overlap',
        () => {
          const there = (all as readonly Stretch[])
            .filter((one) => one.isThere() && one.end() > one.start())
            .toSorted((a, b) => a.start() - b.start())
          return there.every((one, at) => at === 0 || one.start() >= (there[at - 1]?.end() ?? 0))
        },
      ])
    }
    addCumulative = (all: readonly Interval[], demands: readonly number[], capacity: number) => {
      const loadAt = (minute: number): number =>
        (all as readonly Stretch[]).reduce(
          (sum, one, at) => sum + (one.start() <= minute && one.end() > minute ? (demands[at] ?? 0) : 0),
          0,
        )
      rules.push([
        'capacity',
        () => (all as readonly Stretch[]).every((one) => loadAt(one.start()) <= capacity),
      ])
    }
    addReservoirConstraint = () => {
      throw new Error('the weeks of this test have sand enough')
    }
    addExactlyOne = (all: readonly Literal[]) => {
      rules.push(['one', () => all.reduce((sum, one) => sum + valueOf(one), 0) === 1])
    }
    addMaxEquality = () => undefined
    minimize = () => undefined
    addHint = (one: Expression, value: number) => {
      hints.set(one, value)
    }
  }
  class CpSolver {
    solve = () => Promise.resolve()
    statusName = () => ''
    value = valueOf
    objectiveValue = () => 0
    bestObjectiveBound = () => 0
  }
  const engine: Engine = { CpModel, CpSolver, Domain: { fromIntervals: (intervals) => intervals } }
  return { engine, broken: () => rules.filter(([, holds]) => !holds()).map(([name]) => name) }
}

const weeks = [...weeksOf(4, 3), ...weeksOf(9, 2)].map(bareWeek)

describe('a beginning for the general engine', () => {
  it.each(weeks)('tells every variable and obeys the whole model: $name', ({ problem }) => {
    const { schedule, score } = solve(problem, { seed: 1, schedules: 60 })
    expect(score).toMatchObject({ unfinishedGreens: 0, fixtureClashes: 0 })
    const { engine, broken } = judgeEngine()
    const all = { greens: [...problem.greens.keys()], keepFixtures: true, oneDay: true }
    const week = weekModel(engine, problem, all)
    beginAt(week, problem, schedule)
    expect(broken()).toEqual([])
    week.model.addHint(week.finish, score.finishMin - 1)
    expect(broken()).toContain('sum')
  })
})
