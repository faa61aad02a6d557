import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, figureOrNull, words, wordsOrNull } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { ratioOf } from './criterion.ts'
import { DESCRIBE_CHECKS } from './sand-grading-checks.ts'
import {
  betweenPercent,
  curveOf,
  sieveReads,
  sievesSchema,
  type Read,
  type SieveCurve,
} from './sieve-curve.ts'
import { USGA_SIZE_CLASSES } from './size-classes.ts'

const size = (percent: number) =>
  figureOrNull({
    meaning: `Size that ${percent} % of the sample is finer than`,
    unit: 'mm',
    symbol: `D${percent}`,
  })

/** D60 / D10 and D30^2 / (D60 D10). */
const shapeOf = (
  d: ReturnType<typeof sieveReads>,
): { readonly uniformity: Read; readonly curvature: Read } => {
  const uniformity = ratioOf(d.d60Mm, d.d10Mm)
  const lower = ratioOf(d.d30Mm, d.d60Mm)
  const upper = ratioOf(d.d30Mm, d.d10Mm)
  if (lower.value === null) return { uniformity, curvature: lower }
  return { uniformity, curvature: upper.value === null ? upper : { value: lower.value * upper.value } }
}

/** The size classes of a curve, percent by mass, coarse to fine. */
export const fractionsOf = (curve: SieveCurve) =>
  Object.values(USGA_SIZE_CLASSES).map(({ name, fromMm, toMm }) => {
    const read = betweenPercent(curve, fromMm, toMm)
    return { name, fromMm, toMm, percent: read.value, reason: read.value === null ? read.reason : null }
  })

/** `sandGrading.describe`: what a sieve analysis says. */
export const sandGradingDescribe = item({
  name: 'sandGrading.describe',
  title: 'What a sieve analysis says',
  words:
    'D50 is the size that half of the sand is finer than, and so on; it is read off the curve between two sieves, straight on the logarithm of the size. D60 over D10 says how uniform the sand is.',
  formula: 'log Dx straight between two sieves; Cu = D60 / D10; Cc = D30^2 / (D60 D10)',
  evidence: 'handbook',
  sources: ['usgaRootzone', 'geometry'],
  notes: [
    'The limit of fine to very fine sand is at 0.15 mm; some laboratories report 0.125 mm instead. A class whose bounds lie between sieves is read off the same lines.',
    'Outside the sieves there is no number: the reason stands beside it.',
  ],
  inputs: v.strictObject({ sieves: sievesSchema }),
  outputs: v.strictObject({
    d10Mm: size(10),
    d15Mm: size(15),
    d30Mm: size(30),
    d50Mm: size(50),
    d60Mm: size(60),
    d85Mm: size(85),
    d90Mm: size(90),
    uniformity: figureOrNull({ meaning: 'Coefficient of uniformity', unit: '1', symbol: 'Cu' }),
    curvature: figureOrNull({ meaning: 'Coefficient of curvature', unit: '1', symbol: 'Cc' }),
    fractions: v.array(
      v.strictObject({
        name: words('Size class'),
        fromMm: figure({ meaning: 'Finest size of the class', unit: 'mm' }),
        toMm: figure({ meaning: 'Coarsest size of the class', unit: 'mm' }),
        percent: figureOrNull({ meaning: 'Part of the sample in the class', unit: '%' }),
        reason: wordsOrNull('Why there is no number'),
      }),
    ),
    reasons: v.array(v.strictObject({ field: words('Field without a number'), reason: words('Why') })),
  }),
  checks: DESCRIBE_CHECKS,
  run: ({ sieves }) => {
    const curve = curveOf(sieves)
    if (!curve.ok) return curve
    const sizes = sieveReads(curve.value)
    const reads = { ...sizes, ...shapeOf(sizes) }
    return ok({
      d10Mm: reads.d10Mm.value,
      d15Mm: reads.d15Mm.value,
      d30Mm: reads.d30Mm.value,
      d50Mm: reads.d50Mm.value,
      d60Mm: reads.d60Mm.value,
      d85Mm: reads.d85Mm.value,
      d90Mm: reads.d90Mm.value,
      uniformity: reads.uniformity.value,
      curvature: reads.curvature.value,
      fractions: fractionsOf(curve.value),
      reasons: Object.entries(reads).flatMap(([field, read]) =>
        read.value === null ? [{ field, reason: read.reason }] : [],
      ),
    })
  },
})
