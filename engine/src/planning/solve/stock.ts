import { NEVER } from '../spans.ts'
import { FIRST_TINES } from './supplies.ts'
import type { Run } from './run.ts'
import { setScalar } from './undo.ts'

/** Numbers of a draw: kind of stock, minute, amount (grams of sand, millionths of a tine set). */
const WIDTH = 3

/** What of a kind has been delivered by a minute. */
const suppliedBy = (run: Run, kind: number, minute: number): number => {
  const supply = run.ground.supplies[kind]
  let total = 0
  for (
    let i = 0;
    supply !== undefined && i < supply.fromMin.length && (supply.fromMin[i] ?? 0) <= minute;
    i++
  )
    total = supply.total[i] ?? 0
  return total
}

const drawnBy = (run: Run, kind: number, minute: number): number => {
  const { draws } = run
  const last = (run.scalars[run.at.draws] ?? 0) * WIDTH
  let total = 0
  for (let at = 0; at < last; at += WIDTH)
    if (draws[at] === kind && (draws[at + 1] ?? 0) <= minute) total += draws[at + 2] ?? 0
  return total
}

/** Whether so much more can be taken at a minute so that neither that moment nor a later draw goes short. */
const suffices = (run: Run, kind: number, minute: number, amount: number): boolean => {
  const { draws } = run
  if (drawnBy(run, kind, minute) + amount > suppliedBy(run, kind, minute)) return false
  const last = (run.scalars[run.at.draws] ?? 0) * WIDTH
  for (let at = 0; at < last; at += WIDTH) {
    const later = draws[at + 1] ?? 0
    if (draws[at] !== kind || later <= minute) continue
    if (drawnBy(run, kind, later) + amount > suppliedBy(run, kind, later)) return false
  }
  return true
}

/** Earliest minute at or after `from` from which what a step takes from stock can be taken; NEVER when it does not suffice. */
export const stockFrom = (run: Run, step: number, from: number): number => {
  const { ground } = run
  const kind = ground.stockOfStep[step] ?? 0
  const amount = ground.amount[step] ?? 0
  // What lies there now carries all that is planned so far: then no later moment can be short.
  if (
    (run.scalars[run.at.drawn + kind] ?? 0) + amount <= suppliedBy(run, kind, from) ||
    suffices(run, kind, from, amount)
  )
    return from
  const deliveries = ground.supplies[kind]?.fromMin ?? []
  for (const minute of deliveries) if (minute > from && suffices(run, kind, minute, amount)) return minute
  return NEVER
}

/** Takes what a step needs from its stock. */
export const drawStock = (run: Run, step: number, minute: number): void => {
  const kind = run.ground.stockOfStep[step] ?? 0
  const amount = run.ground.amount[step] ?? 0
  const count = run.scalars[run.at.draws] ?? 0
  const at = count * WIDTH
  run.draws[at] = kind
  run.draws[at + 1] = minute
  run.draws[at + 2] = amount
  setScalar(run, run.at.draws, count + 1)
  setScalar(run, run.at.drawn + kind, (run.scalars[run.at.drawn + kind] ?? 0) + amount)
}

/** What of a kind is left at the end of all days after all that is drawn. */
export const leftOver = (run: Run, kind: number): number =>
  suppliedBy(run, kind, run.ground.problem.horizonMin) - (run.scalars[run.at.drawn + kind] ?? 0)

/** Minutes before its start at which a step takes from stock: sand at the filling, tines at the start; -1 where it takes nothing then. */
export const takenBefore = ({ ground }: Run, step: number, afterLoad: number): number =>
  (ground.stockOfStep[step] ?? -1) >= FIRST_TINES ? 0 : afterLoad
