import type { DayFact, FactKind } from './facts.ts'
import type { ScheduledTask } from '../problem.ts'
import { chainMarks } from '../chain.ts'
import { NEVER } from '../spans.ts'
import { supplyOf } from '../stock.ts'
import type { Outage, StockSeen } from './moment.ts'
import type { Broken } from './repair.ts'
import type { Situation } from './situation.ts'
import { drawsOf, takenBefore } from './stocks-at.ts'

/**
 * Why something is otherwise: the kind of the fact and its place in the file (from 0). `follows` is for what moves only because something else has; its fact is the one that set
 * that off where there is only one, else null. `forecast`: a new forecast. `running`: work took longer or shorter than planned, or the old plan did not quite hold.
 */
export type Because = {
  readonly kind: FactKind | 'forecast' | 'running' | 'follows'
  readonly fact: number | null
}

/** Finds the reason of a change. */
export type Causes = {
  readonly green: (green: number) => Because
  readonly task: (green: number, was: ScheduledTask, is: ScheduledTask) => Because
}

const touches = (outage: Outage, from: number, until: number): boolean =>
  outage.fromMin < until && outage.untilMin > from

/** Tonnes or sets under this are rounding. */
const ROUNDING = 1e-4

/** Facts that say something of the future of work, by kind, in the order in which they are looked at for a reason. */
const MOVING: readonly FactKind[] = [
  'machineOut',
  'personOut',
  'rain',
  'late',
  'slower',
  'sandShort',
  'tinesShort',
  'deliveryLate',
  'stopped',
  'pinned',
  'skipped',
  'dry',
  'started',
  'finished',
]

/**
 * Reasons by what is nearest: a fact about the green itself, an outage that lies on its old tasks, a stock that would be overdrawn by them, rain on its old time in work; else what set the whole thing off. A
 * reading of the facts, not a proof: where several facts act together, the first of this order is named.
 */
export const causesOf = (
  situation: Situation,
  broken: Broken,
  facts: readonly DayFact[],
  hasNewForecast: boolean,
): Causes => {
  const { moment, problem, base, standing, oldTasks } = situation
  const indexOf = (kind: FactKind): number => facts.findIndex((fact) => fact.kind === kind)
  const named = (index: number): Because => ({ kind: facts[index]?.kind ?? 'running', fact: index })
  const main = MOVING.map(indexOf).find((index) => index >= 0)
  const follows = (): Because => {
    if (main !== undefined) return { kind: 'follows', fact: facts.length === 1 ? 0 : main }
    return hasNewForecast ? { kind: 'forecast', fact: null } : { kind: 'running', fact: null }
  }
  const outageOn = (task: ScheduledTask): Outage | undefined =>
    moment.machinesOut.find(
      (one) => one.index === task.machine && touches(one, task.startMin, task.finishMin),
    ) ??
    moment.peopleOut.find(
      (one) => task.people.includes(one.index) && touches(one, task.startMin, task.finishMin),
    )
  const ownFact = (green: number): number => {
    const pin = moment.pins.find((one) => one.green === green)
    const id = base.greens[green]?.id
    return (
      moment.skipped.get(green)?.fact ??
      pin?.fact ??
      facts.findIndex((fact) => 'green' in fact && fact.green === id && fact.kind === 'slower')
    )
  }
  const planned = [...standing.tasks, ...oldTasks.filter(({ startMin }) => startMin >= moment.nowMin)]
  const draws = drawsOf(problem, planned)
  /** What was seen of a stock of which an old task of the green would take more than there is by then. */
  const shortOn = (green: number): StockSeen | undefined => {
    const own = drawsOf(
      problem,
      planned.filter((task) => task.green === green),
    ).filter(({ atMin }) => atMin >= moment.nowMin)
    return moment.seen.findLast(({ stock }) =>
      own.some(
        (draw) =>
          draw.stock === stock &&
          takenBefore(draws, stock, draw.atMin + 1) > supplyOf(problem, stock, draw.atMin) + ROUNDING,
      ),
    )
  }
  const rainOn = (green: number): boolean => {
    const was = broken.old[green] ?? []
    const marks = problem.greens[green]
    if (marks === undefined) return false
    const from = was[chainMarks(marks).open]?.startMin ?? NEVER
    const until = was[chainMarks(marks).finish]?.finishMin ?? 0
    return problem.rain.some((span) => span.start < until && span.end > from)
  }
  return {
    green: (green) => {
      const own = ownFact(green)
      if (own >= 0) return named(own)
      const tasks = (broken.old[green] ?? []).flatMap((task) =>
        task === null || task.finishMin <= moment.nowMin ? [] : [task],
      )
      const out = tasks.flatMap((task) => outageOn(task) ?? [])[0]
      if (out !== undefined) return named(out.fact)
      const short = shortOn(green)
      if (short !== undefined) return named(short.fact)
      if (rainOn(green)) {
        const rain = indexOf('rain')
        if (rain >= 0) return named(rain)
        if (hasNewForecast) return { kind: 'forecast', fact: null }
      }
      return follows()
    },
    task: (_green, was) => {
      const out = outageOn(was)
      return out === undefined ? follows() : named(out.fact)
    },
  }
}
