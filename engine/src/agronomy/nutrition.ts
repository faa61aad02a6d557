import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { choice, figure, figureOrNull, quantity, wordsOrNull } from '../catalogue/quantity.ts'
import { ok, type Result } from '../result.ts'
import { NUTRITION_APPLIED_CHECKS, NUTRITION_PRODUCT_FOR_CHECKS } from './nutrition-checks.ts'

/** Phosphorus in phosphate, by mass, as printed (molar masses: 61.948 / 141.943 = 0.4364). */
export const P_PER_P2O5 = 0.43

/** Potassium in potash, by mass, as printed (molar masses: 78.197 / 94.195 = 0.8301). */
export const K_PER_K2O = 0.83

/** kg/ha in 1 g/m2. */
const KG_PER_HA_PER_G_PER_M2 = 10

const analysis = (meaning: string, symbol: string) =>
  quantity({ meaning, unit: '%', symbol, min: 0, max: 100 })

const inputs = v.strictObject({
  nPercent: analysis('Nitrogen on the label', 'N'),
  p2o5Percent: analysis('Phosphate (P2O5) on the label', 'P2O5'),
  k2oPercent: analysis('Potash (K2O) on the label', 'K2O'),
  rate: v.pipe(
    v.strictObject({
      value: quantity({
        meaning: 'Rate of product, in the unit given',
        unit: 'of the rate',
        min: 0,
        max: 100_000,
      }),
      unit: choice('Unit of the rate', ['g/m2', 'kg/ha', 'L/ha']),
    }),
    v.description('Rate of product'),
  ),
  basis: v.optional(
    choice('Label in percent of mass (w/w) or in kg per 100 litres (w/v)', ['w/w', 'w/v']),
    'w/w',
  ),
  specificGravity: v.optional(
    quantity({ meaning: 'Specific gravity of a liquid', unit: 'kg/L', symbol: 'SG', min: 0.5, max: 3 }),
  ),
})

type Input = v.InferOutput<typeof inputs>

/** Mass of product (kg/ha, null when unknown) and the kg/ha that label percentages are taken of. */
type Rate = { readonly productKgPerHa: number | null; readonly percentOfKgPerHa: number }

const rateOf = ({ rate, basis, specificGravity }: Input): Result<Rate, CalculationError> => {
  if (rate.unit !== 'L/ha') {
    if (basis === 'w/v')
      return notDefined('basis', '1', `a label in w/v goes with a rate in L/ha; the rate is in ${rate.unit}`)
    const kgPerHa = rate.unit === 'g/m2' ? rate.value * KG_PER_HA_PER_G_PER_M2 : rate.value
    return ok({ productKgPerHa: kgPerHa, percentOfKgPerHa: kgPerHa })
  }
  const productKgPerHa = specificGravity === undefined ? null : rate.value * specificGravity
  if (basis === 'w/v') return ok({ productKgPerHa, percentOfKgPerHa: rate.value })
  if (productKgPerHa === null)
    return notDefined(
      'specificGravity',
      'kg/L',
      'a rate in L/ha of a label in w/w needs the specific gravity, 0.5 to 3 kg/L',
    )
  return ok({ productKgPerHa, percentOfKgPerHa: productKgPerHa })
}

/** `nutrition.applied`: what a dressing of fertiliser brings. */
export const nutritionApplied = item({
  name: 'nutrition.applied',
  title: 'Nutrients that a fertiliser brings',
  words:
    'Rate times the percentage on the label. Solids: grams a square metre times ten are kilograms a hectare. Liquids by mass go through the specific gravity first; labels by volume do not. Phosphate and potash are turned into the elements.',
  formula:
    'kg/ha = g/m2 x 10 or L/ha x SG (w/w) or L/ha (w/v); N = kg/ha x % / 100; P = 0.43 P2O5; K = 0.83 K2O',
  evidence: 'handbook',
  sources: ['nutrientAdvice2022', 'npkGuidance'],
  notes: [
    'Ask whether a liquid label is w/w or w/v: the same 12-4-6 at specific gravity 1.18 gives 8.5 kg N/ha or 7.2 from 60 L/ha.',
    'The factors of the elements are the printed ones; molar masses give 0.4364 and 0.8301.',
  ],
  inputs,
  outputs: v.strictObject({
    productKgPerHa: figureOrNull({ meaning: 'Product', unit: 'kg/ha' }),
    productReason: wordsOrNull('Why the mass of product is missing'),
    nKgPerHa: figure({ meaning: 'Nitrogen', unit: 'kg/ha', symbol: 'N' }),
    p2o5KgPerHa: figure({ meaning: 'Phosphate', unit: 'kg/ha' }),
    k2oKgPerHa: figure({ meaning: 'Potash', unit: 'kg/ha' }),
    pKgPerHa: figure({ meaning: 'Phosphorus', unit: 'kg/ha', symbol: 'P' }),
    kKgPerHa: figure({ meaning: 'Potassium', unit: 'kg/ha', symbol: 'K' }),
  }),
  checks: NUTRITION_APPLIED_CHECKS,
  run: (input) => {
    const { nPercent, p2o5Percent, k2oPercent } = input
    const labelPercent = nPercent + p2o5Percent + k2oPercent
    if (input.basis === 'w/w' && labelPercent > 100)
      return notDefined('nPercent', '%', `the label adds up to ${labelPercent} %; it can be at most 100 %`)
    const rate = rateOf(input)
    if (!rate.ok) return rate
    const { productKgPerHa, percentOfKgPerHa } = rate.value
    const p2o5KgPerHa = (percentOfKgPerHa * p2o5Percent) / 100
    const k2oKgPerHa = (percentOfKgPerHa * k2oPercent) / 100
    return ok({
      productKgPerHa,
      productReason: productKgPerHa === null ? 'specificGravity is not given' : null,
      nKgPerHa: (percentOfKgPerHa * nPercent) / 100,
      p2o5KgPerHa,
      k2oKgPerHa,
      pKgPerHa: p2o5KgPerHa * P_PER_P2O5,
      kKgPerHa: k2oKgPerHa * K_PER_K2O,
    })
  },
})

/** `nutrition.productFor`: product for a rate of nitrogen. */
export const nutritionProductFor = item({
  name: 'nutrition.productFor',
  title: 'Product for a rate of nitrogen',
  words:
    'Nitrogen wanted divided by the share of nitrogen on the label. Any unit of mass on an area, the same in and out.',
  formula: 'product = N / (N% / 100)',
  evidence: 'handbook',
  sources: ['fertilizerMath2021', 'fertilizerTips'],
  inputs: v.strictObject({
    nKgPerHa: quantity({ meaning: 'Nitrogen wanted', unit: 'kg/ha', symbol: 'N', min: 0, max: 2000 }),
    nPercent: quantity({ meaning: 'Nitrogen on the label', unit: '%', min: 0.01, max: 100 }),
  }),
  outputs: v.strictObject({ productKgPerHa: figure({ meaning: 'Product needed', unit: 'kg/ha' }) }),
  checks: NUTRITION_PRODUCT_FOR_CHECKS,
  run: ({ nKgPerHa, nPercent }) => ok({ productKgPerHa: (100 * nKgPerHa) / nPercent }),
})

/** Fertiliser arithmetic. */
export const NUTRITION_ITEMS = [nutritionApplied, nutritionProductFor]
