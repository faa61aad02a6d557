import { driedAtMin } from '../weather/drying.ts'
import { NEVER } from './spans.ts'

/** First minute at or after `from` by which `needMm` of water has left lying sand; NEVER if not within the horizon. */
export const dryFrom = (driedMm: Float64Array, from: number, needMm: number): number =>
  driedAtMin(driedMm, from, needMm) ?? NEVER
