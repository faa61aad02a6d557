import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, words } from '../catalogue/quantity.ts'
import { ok, type Result } from '../result.ts'
import type { CalculationError } from '../catalogue/errors.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { bladeSpacingMm, bladeWidthMm, grooveShare } from './grooves.ts'
import { unionShare } from './holes.ts'
import { LIMITS } from './limits.ts'
import { holeDiameterMm, passes, spacing } from './pattern.ts'
import { openingOf, type Spacing } from './spacing.ts'
import { SURFACE_YEAR_TOTAL_CHECKS } from './tining-checks.ts'

type Tining = Spacing & { readonly holeDiameterMm: number; readonly passes: number }
type Scarifying = { readonly bladeWidthMm: number; readonly bladeSpacingMm: number; readonly passes: number }

const repeated = (share: number, passes: number): number[] => Array.from({ length: passes }, () => share)

/** The share of every single pass of the year, 0 to 1, in the order given. */
const sharesOf = (
  tining: readonly Tining[],
  scarifying: readonly Scarifying[],
): Result<number[], CalculationError> => {
  const shares: number[] = []
  for (const [i, job] of tining.entries()) {
    const opening = openingOf(job, job.holeDiameterMm, 'holeDiameterMm', `tining[${i}].`)
    if (!opening.ok) return opening
    shares.push(...repeated(opening.value.share, job.passes))
  }
  for (const [i, job] of scarifying.entries()) {
    const share = grooveShare(job.bladeWidthMm, job.bladeSpacingMm)
    if (share > 1)
      return notDefined(
        `scarifying[${i}].bladeWidthMm`,
        'mm',
        `blades of ${job.bladeWidthMm} mm do not fit a spacing of ${job.bladeSpacingMm} mm; the width can be at most the spacing`,
      )
    shares.push(...repeated(share, job.passes))
  }
  return ok(shares)
}

/** Where an added share (0 to 1) stands against the annual guide of 15 to 20 % (CR028, CR029). */
export const standingOfYear = (areaShareSummed: number): 'below' | 'inside' | 'above' => {
  const percent = 100 * areaShareSummed
  if (percent < LIMITS.yearShareLow.value) return 'below'
  return percent > LIMITS.yearShareHigh.value ? 'above' : 'inside'
}

/** `surface.yearTotal`: all tining and scarifying of a year. */
export const surfaceYearTotal = item({
  name: 'surface.yearTotal',
  title: 'Surface opened in a year',
  words:
    'Add the share of every pass of the year, tines and blades. The surface really touched at least once is less, since later passes partly fall into earlier ones. Both are shown; the guide of 15 to 20 % is meant for the added number.',
  formula: 'summed = sum(p); union = 1 - (1 - p1)(1 - p2)...; p = N pi d^2 / (4 x 10^6) or w / s',
  evidence: 'handbook',
  sources: ['ervinNichols2010', 'woodsCoreOrNot2019', 'courseReport2011', 'geometry'],
  notes: [
    'Guide: 15 to 20 % a year with 12 to 15 mm of sand (USGA 2003, 2016). The author of the 10 % floor and 20 % ideal of 2009 wrote in 2019 that many good greens do far less: take the guide as a default and let measured organic matter overrule it.',
    'In Virginia 26.6 % a year was no better than 15 to 20 % (Ervin & Nichols 2010).',
  ],
  inputs: v.strictObject({
    tining: v.pipe(
      v.array(v.strictObject({ holeDiameterMm, ...spacing, passes })),
      v.maxLength(100),
      v.description('Tining of the year'),
    ),
    scarifying: v.pipe(
      v.array(v.strictObject({ bladeWidthMm, bladeSpacingMm, passes })),
      v.maxLength(100),
      v.description('Scarifying of the year'),
    ),
  }),
  outputs: v.strictObject({
    areaShareSummed: figure({ meaning: 'Shares of all passes added up', unit: '1' }),
    areaShareUnion: figure({ meaning: 'Share of the surface touched at least once', unit: '1' }),
    guide: words('The added share against the annual guide of 15 to 20 %: below, inside or above'),
  }),
  checks: SURFACE_YEAR_TOTAL_CHECKS,
  run: ({ tining, scarifying }) => {
    const shares = sharesOf(tining, scarifying)
    if (!shares.ok) return shares
    const areaShareSummed = shares.value.reduce((sum, share) => sum + share, 0)
    return ok({
      areaShareSummed,
      areaShareUnion: unionShare(shares.value),
      guide: standingOfYear(areaShareSummed),
    })
  },
})
