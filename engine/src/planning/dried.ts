import { NEVER } from './spans.ts'

/** Water gone from lying sand since the origin at a minute, mm; straight line inside the hour, flat past the end. */
export const driedAt = (driedMm: Float64Array, minute: number): number => {
  const hour = Math.min(Math.max(Math.floor(minute / 60), 0), driedMm.length - 1)
  const left = driedMm[hour] ?? 0
  const right = driedMm[Math.min(hour + 1, driedMm.length - 1)] ?? left
  return left + ((right - left) * (minute - hour * 60)) / 60
}

/** First minute at or after `from` by which `needMm` of water has left since `from`; NEVER if not within the horizon. */
export const dryFrom = (driedMm: Float64Array, from: number, needMm: number): number => {
  if (needMm <= 0) return from
  const target = driedAt(driedMm, from) + needMm
  for (let hour = Math.floor(from / 60) + 1; hour < driedMm.length; hour++) {
    if ((driedMm[hour] ?? 0) < target) continue
    const left = driedAt(driedMm, Math.max(from, (hour - 1) * 60))
    const start = Math.max(from, (hour - 1) * 60)
    const rate = ((driedMm[hour] ?? 0) - left) / (hour * 60 - start)
    let minute = rate > 0 ? start + Math.ceil((target - left) / rate - 1e-9) : hour * 60
    // The line is rounded; step to the first whole minute that truly reaches the target.
    while (minute > start && driedAt(driedMm, minute - 1) >= target - 1e-9) minute--
    while (driedAt(driedMm, minute) < target - 1e-9) minute++
    return minute
  }
  return NEVER
}
