import { NEVER } from '../spans.ts'
import type { Run } from './run.ts'
import { setScalar } from './undo.ts'

/** Numbers of a draw: kind, minute, grams. */
const WIDTH = 3

/** Grams of a kind that have been delivered by a minute. */
const suppliedBy = (run: Run, kind: number, minute: number): number => {
  const supply = run.ground.supplies[kind]
  let total = 0
  for (
    let i = 0;
    supply !== undefined && i < supply.fromMin.length && (supply.fromMin[i] ?? 0) <= minute;
    i++
  )
    total = supply.totalG[i] ?? 0
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
const suffices = (run: Run, kind: number, minute: number, grams: number): boolean => {
  const { draws } = run
  if (drawnBy(run, kind, minute) + grams > suppliedBy(run, kind, minute)) return false
  const last = (run.scalars[run.at.draws] ?? 0) * WIDTH
  for (let at = 0; at < last; at += WIDTH) {
    const later = draws[at + 1] ?? 0
    if (draws[at] !== kind || later <= minute) continue
    if (drawnBy(run, kind, later) + grams > suppliedBy(run, kind, later)) return false
  }
  return true
}

/** Earliest minute at or after `from` from which the sand of a step can be taken; NEVER when it does not suffice. */
export const sandFrom = (run: Run, step: number, from: number): number => {
  const { ground } = run
  const kind = ground.sandKind[ground.greenOfStep[step] ?? 0] ?? 0
  const grams = ground.sandG[step] ?? 0
  // What lies there now carries all that is planned so far: then no later moment can be short.
  if (
    (run.scalars[run.at.drawn + kind] ?? 0) + grams <= suppliedBy(run, kind, from) ||
    suffices(run, kind, from, grams)
  )
    return from
  const deliveries = ground.supplies[kind]?.fromMin ?? []
  for (const minute of deliveries) if (minute > from && suffices(run, kind, minute, grams)) return minute
  return NEVER
}

/** Takes sand from the bay. */
export const drawSand = (run: Run, kind: number, minute: number, grams: number): void => {
  const count = run.scalars[run.at.draws] ?? 0
  const at = count * WIDTH
  run.draws[at] = kind
  run.draws[at + 1] = minute
  run.draws[at + 2] = grams
  setScalar(run, run.at.draws, count + 1)
  setScalar(run, run.at.drawn + kind, (run.scalars[run.at.drawn + kind] ?? 0) + grams)
}
