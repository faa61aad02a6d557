import { fail, ok, type Result } from '../result.ts'

/** One tray test of this dresser with this sand: the gate (or belt) figure that stood, and what came out. */
export type GateReading = { readonly setting: number; readonly rateKgPerM2: number }

/** Why no setting can be told. Nothing is guessed beyond what was measured. */
export type GateSettingError =
  | { readonly type: 'tooFewReadings'; readonly readings: number; readonly needed: 2 }
  | { readonly type: 'notRising'; readonly setting: number; readonly otherSetting: number }
  | {
      readonly type: 'outsideReadings'
      readonly rateKgPerM2: number
      readonly minKgPerM2: number
      readonly maxKgPerM2: number
    }

/**
 * The gate figure for a wished rate, straight between the two nearest of the manager's own readings (same sand, same speed). Only inside
 * what was measured; more gate must have given more sand.
 */
export const gateSettingFor = (
  rateKgPerM2: number,
  readings: readonly GateReading[],
): Result<number, GateSettingError> => {
  const sorted = readings.toSorted((a, b) => a.setting - b.setting)
  const [first] = sorted
  const last = sorted[sorted.length - 1]
  if (first === undefined || last === undefined || sorted.length < 2)
    return fail({ type: 'tooFewReadings', readings: readings.length, needed: 2 })
  for (const [k, next] of sorted.slice(1).entries()) {
    const before = sorted[k] ?? next
    if (next.rateKgPerM2 <= before.rateKgPerM2 || next.setting === before.setting)
      return fail({ type: 'notRising', setting: before.setting, otherSetting: next.setting })
    if (rateKgPerM2 < before.rateKgPerM2 || rateKgPerM2 > next.rateKgPerM2) continue
    const share = (rateKgPerM2 - before.rateKgPerM2) / (next.rateKgPerM2 - before.rateKgPerM2)
    return ok(before.setting + share * (next.setting - before.setting))
  }
  return fail({
    type: 'outsideReadings',
    rateKgPerM2,
    minKgPerM2: first.rateKgPerM2,
    maxKgPerM2: last.rateKgPerM2,
  })
}
