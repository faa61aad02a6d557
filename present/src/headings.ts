import { clockFace as hoursOf } from '@swardwright/engine'

/**
 * A heading as a clock face: '2 to 8'. `headingDeg` is the bearing of the runs, clockwise from north, any number of degrees; a run goes
 * both ways, so 60 and 240 are the same. `twelveDeg` is the bearing of twelve o'clock: the line of play where it is known, else north (0).
 */
export const clockFace = (headingDeg: number, twelveDeg = 0): string => {
  const { fromHour, toHour } = hoursOf(headingDeg, twelveDeg)
  return fromHour === 6 ? `${toHour} to ${fromHour}` : `${fromHour} to ${toHour}`
}

/** The clock face with the degrees behind: '2 to 8 (62\u00b0)'. Degrees are those of the run between 0 and 179. */
export const headingWords = (headingDeg: number, twelveDeg = 0): string =>
  `${clockFace(headingDeg, twelveDeg)} (${Math.round(((headingDeg % 180) + 180) % 180) % 180}\u00b0)`
