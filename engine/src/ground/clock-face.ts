import { halfTurnDeg } from './heading-frame.ts'

/** A line of travel as greenkeepers tell it: 'from 2 to 8'. Opposite hours are the same line. */
export type ClockFace = {
  /** 1 to 6; with 6 the line is told from 6 to 12. */
  readonly fromHour: number
  /** 7 to 12, always six hours on. */
  readonly toHour: number
  /** How far the true heading lies clockwise of the hour told, degrees, -15 to 15. */
  readonly offDeg: number
}

const DEGREES_PER_HOUR = 30

/**
 * The clock face of a heading, seen by somebody who walks onto the green along the line of play: 12 lies at the back.
 * `playDeg` is the compass heading of that walk (0 where it is not known, so that 12 is north). Common practice, no source.
 */
export const clockFace = (headingDeg: number, playDeg: number): ClockFace => {
  const turnedDeg = halfTurnDeg(headingDeg - playDeg)
  const hour = Math.round(turnedDeg / DEGREES_PER_HOUR)
  const offDeg = turnedDeg - hour * DEGREES_PER_HOUR
  const fromHour = hour % 6 === 0 ? 6 : hour
  return { fromHour, toHour: fromHour + 6, offDeg }
}

/** The compass heading, 0 to under 180 degrees, of an hour from 1 to 12. */
export const headingOfHour = (hour: number, playDeg: number): number =>
  halfTurnDeg(hour * DEGREES_PER_HOUR + playDeg)
