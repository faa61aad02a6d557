import type { Random } from '../search/random.ts'
import { dryBy } from './drying.ts'
import type { Ground } from './ground.ts'
import { RECORD_HEAD, type Run } from './run.ts'

/** The steps of a schedule as it was laid, by step: -1 where there is none. */
export type Laid = {
  readonly start: Int32Array
  readonly end: Int32Array
  readonly machine: Int32Array
  /** Row `step * mostCrew + n`. */
  readonly people: Int32Array
}

export const newLaid = ({ steps, mostCrew }: Ground): Laid => ({
  start: new Int32Array(steps).fill(-1),
  end: new Int32Array(steps).fill(-1),
  machine: new Int32Array(steps).fill(-1),
  people: new Int32Array(steps * mostCrew).fill(-1),
})

/** Reads the schedule that stands in the run. */
export const readLaid = ({ at, ground, log, record, scalars }: Run, laid: Laid): void => {
  const { mostCrew } = ground
  laid.start.fill(-1)
  laid.end.fill(-1)
  const last = (scalars[at.records] ?? 0) * record
  for (let from = 0; from < last; from += record) {
    const step = log[from] ?? 0
    const start = log[from + 2] ?? 0
    laid.start[step] = start
    laid.end[step] = start + (log[from + 3] ?? 0)
    laid.machine[step] = log[from + 1] ?? -1
    for (let n = 0; n < mostCrew; n++) laid.people[step * mostCrew + n] = log[from + RECORD_HEAD + n] ?? -1
  }
}

export const sharesPeople = ({ mostCrew }: Ground, { people }: Laid, a: number, b: number): boolean => {
  for (let n = 0; n < mostCrew; n++) {
    const person = people[a * mostCrew + n] ?? -1
    if (person < 0) break
    for (let m = 0; m < mostCrew; m++) if (people[b * mostCrew + m] === person) return true
  }
  return false
}

/** Earliest start of a step by its own chain. */
const chainReady = (ground: Ground, laid: Laid, step: number): number => {
  const green = ground.greenOfStep[step] ?? 0
  if (step === ground.firstStep[green]) return -1
  const before = laid.end[step - 1] ?? -1
  if (before < 0) return -1
  let dressed = step - 1
  while (dressed > (ground.firstStep[green] ?? 0) && ground.isDress[dressed] !== 1) dressed--
  const ready = before + (ground.lagMin[step] ?? 0)
  return ground.isDress[dressed] === 1
    ? Math.max(ready, dryBy(ground.problem, ground.drying, step, laid.end[dressed] ?? 0))
    : ready
}

/** What a step waited for: the step of another green that had its machine or one of its people until last; -1 where its own chain was later, or nothing was in the way. */
export const waitedFor = (ground: Ground, laid: Laid, step: number, random: Random): number => {
  const start = laid.start[step] ?? -1
  let latest = chainReady(ground, laid, step)
  let blocker = -1
  let ties = 1
  for (let other = 0; other < ground.steps; other++) {
    const end = laid.end[other] ?? -1
    if (end < latest || end < 0 || end > start || other === step) continue
    if (laid.machine[other] !== laid.machine[step] && !sharesPeople(ground, laid, other, step)) continue
    ties = end === latest ? ties + 1 : 1
    if (end > latest || random.below(ties) === 0) blocker = other
    latest = end
  }
  return blocker
}
