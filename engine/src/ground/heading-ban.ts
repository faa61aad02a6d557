import { angleBetweenDeg, normalHeadingDeg } from './heading-frame.ts'

/** Headings not to be used: all lines of travel within `halfWidthDeg` of `middleDeg` (both ways), and why. */
export type HeadingBan = {
  readonly middleDeg: number
  /** 0 to 90 degrees; 90 bans everything. */
  readonly halfWidthDeg: number
  readonly reason: 'bunker' | 'slope' | 'lastTime' | 'other'
}

/** The bans a heading breaks. A heading on the limit itself is allowed. */
export const bansBroken = (headingDeg: number, bans: readonly HeadingBan[]): readonly HeadingBan[] =>
  bans.filter((ban) => angleBetweenDeg(headingDeg, ban.middleDeg) < ban.halfWidthDeg - 1e-9)

/** A ban on headings from one compass angle clockwise to another, as a person marks them on the map. */
export const banFromTo = (fromDeg: number, toDeg: number, reason: HeadingBan['reason']): HeadingBan => {
  const spanDeg = normalHeadingDeg(toDeg - fromDeg)
  return {
    middleDeg: normalHeadingDeg(fromDeg + spanDeg / 2) % 180,
    halfWidthDeg: Math.min(90, spanDeg / 2),
    reason,
  }
}

/** Keeps next time's heading away from the last ones. `apartDeg` 0 to 90. */
export const bansFromLastTimes = (
  lastHeadingsDeg: readonly number[],
  apartDeg: number,
): readonly HeadingBan[] =>
  lastHeadingsDeg.map((middleDeg) => ({
    middleDeg: middleDeg % 180,
    halfWidthDeg: apartDeg,
    reason: 'lastTime',
  }))

/** Slope felt sideways on a heading, %. `cross = slope |sin(heading - fall)|`; `fallDeg` is the compass angle downhill. */
export const crossSlopePercent = (slopePercent: number, fallDeg: number, headingDeg: number): number =>
  slopePercent * Math.abs(Math.sin(((headingDeg - fallDeg) * Math.PI) / 180))

/**
 * The headings on which a slope is felt sideways beyond a machine's limit: `asin(limit / slope)` either side of the fall line stay free.
 * Undefined when the slope nowhere exceeds the limit.
 */
export const crossSlopeBan = (
  slopePercent: number,
  fallDeg: number,
  limitPercent: number,
): HeadingBan | undefined => {
  if (slopePercent <= limitPercent) return undefined
  const freeDeg = (Math.asin(Math.max(0, limitPercent) / slopePercent) * 180) / Math.PI
  return { middleDeg: normalHeadingDeg(fallDeg + 90) % 180, halfWidthDeg: 90 - freeDeg, reason: 'slope' }
}
