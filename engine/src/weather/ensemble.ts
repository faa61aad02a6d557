import type { WeatherHours } from './hours.ts'

/**
 * Chance of rain in each hour: the share of members with at least `thresholdMm` of those that have a figure; NaN where none has.
 * With one member it is 0 or 1.
 */
export const rainChance = (weather: WeatherHours, thresholdMm: number): Float64Array =>
  Float64Array.from({ length: weather.hours }, (_, h) => {
    let [wet, known] = [0, 0]
    for (let m = 0; m < weather.members; m++) {
      const mm = weather.rainMm[m * weather.hours + h] ?? NaN
      if (Number.isNaN(mm)) continue
      known++
      if (mm >= thresholdMm) wet++
    }
    return known === 0 ? NaN : wet / known
  })

/**
 * For each hour, the chance that work begun with it can go on for `length` hours: the share of members whose hours are all workable from there.
 * `workableOf` gives one member's hours, 1 where the hour can be worked (`workableHours` for one operation, or any other rule).
 * The last `length - 1` hours, from which the window runs out of sight, are NaN.
 */
export const windowChance = (
  weather: WeatherHours,
  length: number,
  workableOf: (member: number) => Uint8Array,
): Float64Array => {
  const open = new Float64Array(weather.hours)
  for (let m = 0; m < weather.members; m++) {
    const workable = workableOf(m)
    let run = 0
    for (let h = weather.hours - 1; h >= 0; h--) {
      run = workable[h] === 1 ? run + 1 : 0
      if (run >= length) open[h] = (open[h] ?? 0) + 1
    }
  }
  return open.map((count, h) => (h + length > weather.hours ? NaN : count / weather.members))
}
