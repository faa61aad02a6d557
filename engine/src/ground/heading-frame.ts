import type { LocalPoint } from './plane.ts'

/**
 * The plane turned so that `u` runs along a heading and `v` to its right, both in metres.
 * Heading: compass degrees, 0 = north, 90 = east.
 */
export type HeadingFrame = { readonly sin: number; readonly cos: number }

/** The frame of a heading. */
export const frameOf = (headingDeg: number): HeadingFrame => {
  const angle = (headingDeg * Math.PI) / 180
  return { sin: Math.sin(angle), cos: Math.cos(angle) }
}

/** Back from along and across to the plane. */
export const pointAt = (frame: HeadingFrame, uM: number, vM: number): LocalPoint => ({
  x: uM * frame.sin + vM * frame.cos,
  y: uM * frame.cos - vM * frame.sin,
})

/** The same heading between 0 and 360 degrees. */
export const normalHeadingDeg = (headingDeg: number): number => ((headingDeg % 360) + 360) % 360

/** The smallest angle between two lines of travel, 0 to 90 degrees: runs go both ways, so 10 and 190 are the same line. */
export const angleBetweenDeg = (aDeg: number, bDeg: number): number => {
  const apart = normalHeadingDeg(aDeg - bDeg) % 180
  return Math.min(apart, 180 - apart)
}

/** A line of travel between 0 and 180 degrees: the same line whichever way it is driven. */
export const halfTurnDeg = (headingDeg: number): number => ((headingDeg % 180) + 180) % 180
