import type { Operation } from '../planning/operations.ts'

/** Why an hour cannot be worked. Closed; the order is that of the bits in a mask. */
export const STOPS = ['dark', 'rain', 'wetGround', 'dew', 'frost', 'wind', 'heat', 'softGround'] as const

/** What to watch in an hour that can be worked. */
export const CAUTIONS = ['partlyDark', 'gusty', 'wilt', 'noForecast'] as const

/** All codes that an hour may carry; the position is the bit. */
export const REASONS = [...STOPS, ...CAUTIONS] as const

/** A stop or a caution. */
export type Reason = (typeof REASONS)[number]

/** A stop. */
export type Stop = (typeof STOPS)[number]

/** Bit of a reason in a mask. */
export const bitOf = (reason: Reason): number => 1 << REASONS.indexOf(reason)

/** Mask of several reasons. */
export const maskOf = (reasons: readonly Reason[]): number =>
  reasons.reduce((mask, reason) => mask | bitOf(reason), 0)

/** The reasons in a mask, stops first. */
export const reasonsOf = (mask: number): Reason[] => REASONS.filter((reason) => (mask & bitOf(reason)) !== 0)

/**
 * What stops each operation (common practice, no source, save frost: USGA, Frost Delays). Cores are drawn in dew, but not from ground that rain left wet on
 * top, since they smear; loose material is neither brushed nor blown while wet; blades, sand, mats and rollers need a dry leaf, or sand and cuttings stick;
 * granules and seed drift in wind; water may be given at any hour without frost.
 */
export const STOPS_OF: Readonly<Record<Operation, readonly Stop[]>> = {
  feed: ['dark', 'rain', 'frost', 'wind'],
  core: ['dark', 'rain', 'wetGround', 'frost', 'heat', 'softGround'],
  solidTine: ['dark', 'rain', 'frost', 'heat', 'softGround'],
  scarify: ['dark', 'rain', 'wetGround', 'dew', 'frost', 'heat', 'softGround'],
  collect: ['dark', 'rain', 'wetGround', 'frost', 'softGround'],
  brushIn: ['dark', 'rain', 'wetGround', 'dew', 'frost'],
  blow: ['dark', 'rain', 'wetGround', 'frost'],
  cut: ['dark', 'rain', 'wetGround', 'dew', 'frost', 'softGround'],
  dress: ['dark', 'rain', 'wetGround', 'dew', 'frost', 'wind', 'softGround'],
  dragIn: ['dark', 'rain', 'wetGround', 'dew', 'frost'],
  roll: ['dark', 'rain', 'wetGround', 'dew', 'frost', 'softGround'],
  seed: ['dark', 'rain', 'frost', 'wind'],
  water: ['frost'],
}
