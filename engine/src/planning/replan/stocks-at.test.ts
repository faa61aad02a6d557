import { describe, expect, it } from 'vitest'
import { smallProblem } from '../check/small-course.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { openedGreens } from '../score.ts'
import { solve } from '../solve/solve.ts'
import { demoInput } from '../testing/demo.ts'
import type { Moment, StockSeen } from './moment.ts'
import { stocksAt } from './stocks-at.ts'

/* The small course: a is cored from 501 to 531, b from 551 at the soonest (531 and 20 minutes for the look at the first green). Each coring wears six tenths of a set. Two sets lie in the shed. */
const small = smallProblem()
const problem: Problem = {
  ...small,
  greens: small.greens.map((green) => ({
    ...green,
    steps: green.steps
      .filter(({ operation }) => operation !== 'water')
      .map((step) => (step.operation === 'core' ? { ...step, tines: { kind: 0, sets: 0.6 } } : step)),
  })),
  tines: [
    {
      kind: 0,
      sets: 1.5,
      deliveries: [
        { atMin: 510, sets: 1 },
        { atMin: 600, sets: 1 },
      ],
    },
    { kind: 1, sets: 9, deliveries: [] },
    { kind: 0, sets: 0.5, deliveries: [] },
  ],
}
const { schedule } = solve(problem, { seed: 1, schedules: 30 })
const course = { ...demoInput().course, stores: [], tineSets: [] }

type Seen = Omit<StockSeen, 'fact'>

const stocks = (
  seen: readonly Seen[],
  nowMin: number,
  tasks = schedule.tasks,
): Pick<Problem, 'stores' | 'tines'> => {
  const moment: Moment = {
    nowMin,
    spells: [],
    machinesOut: [],
    peopleOut: [],
    slower: [],
    seen: seen.map((one, fact) => ({ ...one, fact })),
    deliveries: [],
    pins: [],
    skipped: new Map(),
  }
  return stocksAt(problem, {
    course,
    moment,
    standing: { tasks: tasks.filter(({ startMin }) => startMin < nowMin), parts: [] },
  })
}

const again = (sets: number) => {
  const nowMin = 540
  const tasks = schedule.tasks.filter(({ startMin }) => startMin < nowMin)
  const now = {
    ...problem,
    ...stocks([{ stock: 0, atMin: nowMin, amount: sets }], nowMin),
    committed: { nowMin, tasks, pins: [] },
  }
  const made = solve(now, { seed: 1, schedules: 30 }).schedule
  return openedGreens(now, made.tasks).find(({ green }) => green === 1)?.opened
}

describe('tine sets that were counted', () => {
  it('count with what had been worn by then, in the first entry of their kind; later deliveries come on top', () => {
    // a has worn 0.6 by 540; what was delivered at 510 is among the 0.4 that are left. 0.4 + 0.6 = 1.
    expect(stocks([{ stock: 0, atMin: 540, amount: 0.4 }], 540).tines).toEqual([
      { kind: 0, sets: 1, deliveries: [{ atMin: 600, sets: 1 }] },
      { kind: 1, sets: 9, deliveries: [] },
      { kind: 0, sets: 0, deliveries: [] },
    ])
  })

  it('of which the last was counted hold', () => {
    const twice = [
      { stock: 0, atMin: 540, amount: 0.2 },
      { stock: 0, atMin: 520, amount: 3 },
    ]
    expect(stocks(twice, 540).tines?.[0]?.sets).toBeCloseTo(0.8, 9)
  })

  it('are worn once by a covering that was broken off and taken up again', () => {
    const [core] = schedule.tasks.filter(({ kind, green }) => kind === 'core' && green === 0)
    const parts: readonly ScheduledTask[] =
      core === undefined
        ? []
        : [
            { ...core, finishMin: 511 },
            { ...core, startMin: 520, finishMin: 540 },
          ]
    expect(parts).toHaveLength(2)
    expect(stocks([{ stock: 0, atMin: 540, amount: 0.4 }], 540, parts).tines?.[0]?.sets).toBe(1)
  })

  it('that suffice change nothing; too few make the next green wait for the delivery, to the minute', () => {
    expect(again(0.6)).toBe(551)
    expect(again(0.5)).toBe(600)
  })
})

describe('sand that was looked at', () => {
  it('counts with what had been loaded by then', () => {
    // a's first load is taken before 540, its second after it.
    const loaded = schedule.tasks.filter(({ kind, startMin }) => kind === 'load' && startMin < 540)
    expect(loaded.map(({ green, load }) => [green, load])).toEqual([[0, 1]])
    const firstT = small.greens[0]?.steps.find(({ load }) => load === 1)?.sandT ?? 0
    const kind = small.greens[0]?.sand.kind ?? 'damp'
    const at = small.stores.findIndex((store) => store.kind === kind)
    expect(stocks([{ stock: kind, atMin: 540, amount: 0.3 }], 540).stores[at]?.stockT).toBeCloseTo(
      0.3 + firstT,
      9,
    )
  })
})
