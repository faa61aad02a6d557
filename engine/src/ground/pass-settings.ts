import { fail, ok, type Result } from '../result.ts'
import type { RowOrder } from './row-order.ts'
import type { TurnStyle } from './turn-length.ts'

/** How a machine works over a green. Lengths in m, times in s. */
export type PassSettings = {
  /** Working width, 0.1 to 12 m. */
  readonly widthM: number
  /** Overlap of neighbouring runs, 0 m to under the width (at most 0.9 of it). */
  readonly overlapM: number
  /** Working speed, 0.05 to 6 m/s. */
  readonly speedMPerS: number
  /** Time of one lift, turn and set-down, 0 to 600 s. Left out: the turn's own length at working speed. */
  readonly turnS?: number
  /** Smallest turning radius, 0 to 12 m; 0 turns on the spot. */
  readonly turnRadiusM: number
  readonly turnStyle: TurnStyle
  /** Laps round the edge (and round islands) before the straight runs, 0 to 20. */
  readonly laps: number
  readonly order: RowOrder
}

/** A figure that a pass cannot be worked with. */
export type PassSettingsError = {
  readonly type: 'outOfRange'
  readonly field: keyof PassSettings
  readonly unit: 'm' | 'm/s' | 's' | '1'
  readonly min: number
  readonly max: number
  readonly received: number
}

type Limit = {
  readonly field: keyof PassSettings
  readonly unit: PassSettingsError['unit']
  min: number
  max: number
}

/** More overlap than this share of the width is a slip of the pen: the machine would cover everything ten times. */
const MAX_OVERLAP_SHARE = 0.9

const limitsFor = (settings: PassSettings): readonly (Limit & { readonly received: number })[] => [
  { field: 'widthM', unit: 'm', min: 0.1, max: 12, received: settings.widthM },
  {
    field: 'overlapM',
    unit: 'm',
    min: 0,
    max: settings.widthM * MAX_OVERLAP_SHARE,
    received: settings.overlapM,
  },
  { field: 'speedMPerS', unit: 'm/s', min: 0.05, max: 6, received: settings.speedMPerS },
  { field: 'turnS', unit: 's', min: 0, max: 600, received: settings.turnS ?? 0 },
  { field: 'turnRadiusM', unit: 'm', min: 0, max: 12, received: settings.turnRadiusM },
  { field: 'laps', unit: '1', min: 0, max: 20, received: settings.laps },
]

/** Settings whose figures are all in range; else the first that is not. Laps must be whole. */
export const checkedPassSettings = (settings: PassSettings): Result<PassSettings, PassSettingsError> => {
  const isBad = ({ field, min, max, received }: Limit & { readonly received: number }): boolean =>
    !(received >= min && received <= max) || (field === 'laps' && !Number.isInteger(received))
  const bad = limitsFor(settings).find(isBad)
  return bad === undefined ? ok(settings) : fail({ type: 'outOfRange', ...bad })
}
