import { fail, ok, type Result } from '../result.ts'
import type { Run } from './passes.ts'
import type { LocalPoint } from './plane.ts'

/** How the dresser spreads. */
export type Dresser = {
  /** Distance between the middles of neighbouring runs, m: what each bout has to cover (the passes' width less overlap). */
  readonly boutM: number
  /** Sand wanted on the ground, as spread, kg/m2. */
  readonly rateKgPerM2: number
  /** What the hopper takes of that sand, kg. */
  readonly hopperKg: number
}

/** One filling of the hopper and the runs it is for. */
export type DresserLoad = {
  /** 1 for the first. */
  readonly load: number
  /** First and last run, as places in the list of runs (from 0). */
  readonly firstRun: number
  readonly lastRun: number
  /** Where spreading starts and ends. */
  readonly from: LocalPoint
  readonly to: LocalPoint
  readonly lengthM: number
  readonly massKg: number
}

/** All loads of one pass. */
export type SandRuns = {
  readonly loads: readonly DresserLoad[]
  readonly massKg: number
  readonly lengthM: number
}

/** Why sand cannot be laid out in whole runs. */
export type SandRunsError =
  | {
      readonly type: 'outOfRange'
      readonly field: keyof Dresser
      readonly unit: string
      readonly min: number
      readonly max: number
      readonly received: number
    }
  | {
      /** One run needs more than a full hopper: it would run dry on the green whatever the split. */
      readonly type: 'runNeedsMoreThanHopper'
      readonly run: number
      readonly massKg: number
      readonly hopperKg: number
    }

const LIMITS = [
  { field: 'boutM', unit: 'm', min: 0.2, max: 20 },
  { field: 'rateKgPerM2', unit: 'kg/m2', min: 0.01, max: 30 },
  { field: 'hopperKg', unit: 'kg', min: 10, max: 10_000 },
] as const

const HALVINGS = 40

/** Splits masses, in order, into groups none of which exceeds `mostKg`: as places where a group starts. */
const starts = (massesKg: readonly number[], mostKg: number): readonly number[] => {
  const found = [0]
  let heldKg = 0
  massesKg.forEach((massKg, k) => {
    if (k > 0 && heldKg + massKg > mostKg) {
      found.push(k)
      heldKg = 0
    }
    heldKg += massKg
  })
  return found
}

/** The least fill with which the same number of loads still does, so that loads come out alike and the last is no remnant. */
const evenFillKg = (massesKg: readonly number[], hopperKg: number): number => {
  const loads = starts(massesKg, hopperKg).length
  let low = Math.max(...massesKg)
  let high = hopperKg
  for (let round = 0; round < HALVINGS; round++) {
    const middle = (low + high) / 2
    if (starts(massesKg, middle).length <= loads) high = middle
    else low = middle
  }
  return high
}

const loadOf = (runs: readonly Run[], massesKg: readonly number[], firstRun: number, lastRun: number) => {
  const part = runs.slice(firstRun, lastRun + 1)
  const massKg = massesKg.slice(firstRun, lastRun + 1).reduce((sum, kg) => sum + kg, 0)
  return { part, massKg, lengthM: part.reduce((sum, run) => sum + run.lengthM, 0) }
}

/**
 * Splits the runs of a pass into dresser loads: `mass of a run = length x bout x rate`; a load ends at the end of a run, so none runs dry
 * on the green; as few loads as whole runs allow, filled alike. Runs reach a little past the edge, so the sum stands some per cent above
 * area x rate.
 */
export const sandRuns = (runs: readonly Run[], dresser: Dresser): Result<SandRuns, SandRunsError> => {
  const bad = LIMITS.find(({ field, min, max }) => !(dresser[field] >= min && dresser[field] <= max))
  if (bad !== undefined) return fail({ type: 'outOfRange', ...bad, received: dresser[bad.field] })
  if (runs.length === 0) return ok({ loads: [], massKg: 0, lengthM: 0 })
  const { hopperKg } = dresser
  const massesKg = runs.map((run) => run.lengthM * dresser.boutM * dresser.rateKgPerM2)
  const tooLong = massesKg.findIndex((kg) => kg > hopperKg)
  if (tooLong >= 0)
    return fail({ type: 'runNeedsMoreThanHopper', run: tooLong, massKg: massesKg[tooLong] ?? 0, hopperKg })
  const firsts = starts(massesKg, evenFillKg(massesKg, hopperKg))
  const loads = firsts.flatMap((firstRun, k): DresserLoad[] => {
    const lastRun = (firsts[k + 1] ?? runs.length) - 1
    const { part, massKg, lengthM } = loadOf(runs, massesKg, firstRun, lastRun)
    const [first] = part
    const last = part[part.length - 1]
    if (first === undefined || last === undefined) return []
    return [{ load: k + 1, firstRun, lastRun, from: first.from, to: last.to, lengthM, massKg }]
  })
  const sum = (of: (load: DresserLoad) => number) => loads.reduce((total, load) => total + of(load), 0)
  return ok({ loads, massKg: sum((load) => load.massKg), lengthM: sum((load) => load.lengthM) })
}
