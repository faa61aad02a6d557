import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { choice, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { atLeast, atMost, criteriaSchema, type Criterion } from './criterion.ts'
import { matchCriteria, standardCriteria, STANDARDS } from './grading-standards.ts'
import { LIMITS } from './limits.ts'
import { COMPARE_CHECKS, GRAVEL_CHECKS } from './sand-grading-checks.ts'
import { curveOf, sievesSchema } from './sieve-curve.ts'

const verdict = {
  criteria: criteriaSchema,
  pass: v.pipe(
    v.nullable(v.boolean()),
    v.description('All criteria pass; null when one could not be judged and none fails'),
  ),
}

const withVerdict = (criteria: readonly Criterion[]) => ({
  criteria: [...criteria],
  pass: criteria.some((c) => c.pass === false) ? false : criteria.some((c) => c.pass === null) ? null : true,
})

const sieved = (meaning: string) => v.pipe(v.strictObject({ sieves: sievesSchema }), v.description(meaning))

/** `sandGrading.compare`: dressing sand against a standard and against the layer it lies on. */
export const sandGradingCompare = item({
  name: 'sandGrading.compare',
  title: 'Dressing sand against the rootzone and a standard',
  words:
    'The dressing sand is held against the limits of the standard, class by class, and against the sand of the green: about the same size, never finer over coarser, no class far apart.',
  formula:
    'share of each size class against its limit; D50 ratio 0.8 to 1.25; gap in a class at most 10 points; D15 rootzone / D85 dressing <= 8; D15 dressing / D15 rootzone >= 0.8',
  evidence: 'handbook',
  sources: ['usgaRootzone', 'ukSand', 'usgaGravel', 'ownAssumption'],
  notes: [
    'The USGA table is the edition before 2018; that its particle sizes still hold in the sixth version (February 2018) is from memory.',
    'No published tolerance was found for how alike two sands must be: the ratios and the gap are our placeholders and marked so.',
    'Sources disagree on the fine side: the USGA splits at 0.15 mm, UK advisers ask for 0.125 to 0.710 mm.',
  ],
  inputs: v.strictObject({
    dressing: sieved('The dressing sand'),
    rootzone: sieved('The sand of the green it lies on'),
    standard: choice('Standard for the dressing sand', STANDARDS),
  }),
  outputs: v.strictObject(verdict),
  checks: COMPARE_CHECKS,
  run: ({ dressing, rootzone, standard }) => {
    const sand = curveOf(dressing.sieves, 'dressing.sieves')
    if (!sand.ok) return sand
    const green = curveOf(rootzone.sieves, 'rootzone.sieves')
    if (!green.ok) return green
    return ok(
      withVerdict([...standardCriteria(standard, sand.value), ...matchCriteria(sand.value, green.value)]),
    )
  },
})

const grainMm = (meaning: string, symbol: string) =>
  quantity({ meaning, unit: 'mm', symbol, min: 0.001, max: 200 })

const percentOfGravel = (meaning: string) => v.optional(quantity({ meaning, unit: '%', min: 0, max: 100 }))

/** `sandGrading.gravel`: gravel under a rootzone without a layer between. */
export const sandGradingGravel = item({
  name: 'sandGrading.gravel',
  title: 'Gravel under the rootzone',
  words:
    'Without a layer between, the gravel must be fine enough that sand bridges over it, coarse enough to take the water, and uniform. The three ratios say so.',
  formula:
    'D15g / D85r <= 8; D15g / D15r >= 5; D90g / D15g <= 3; largest 12 mm; under 2 mm <= 10 %; under 1 mm <= 5 %',
  evidence: 'handbook',
  sources: ['usgaGravel'],
  inputs: v.strictObject({
    rootzoneD85Mm: grainMm('D85 of the rootzone', 'D85r'),
    rootzoneD15Mm: grainMm('D15 of the rootzone', 'D15r'),
    gravelD15Mm: grainMm('D15 of the gravel', 'D15g'),
    gravelD90Mm: grainMm('D90 of the gravel', 'D90g'),
    gravelLargestMm: v.optional(grainMm('Largest stone in the gravel', 'Dmax')),
    gravelUnder2MmPercent: percentOfGravel('Gravel finer than 2 mm'),
    gravelUnder1MmPercent: percentOfGravel('Gravel finer than 1 mm'),
  }),
  outputs: v.strictObject(verdict),
  checks: GRAVEL_CHECKS,
  run: (input) => {
    const given = (value: number | undefined, judge: (value: number) => Criterion): readonly Criterion[] =>
      value === undefined ? [] : [judge(value)]
    return ok(
      withVerdict([
        atMost(LIMITS.gravelBridging, { value: input.gravelD15Mm / input.rootzoneD85Mm }),
        atLeast(LIMITS.gravelPermeability, { value: input.gravelD15Mm / input.rootzoneD15Mm }),
        atMost(LIMITS.gravelUniformity, { value: input.gravelD90Mm / input.gravelD15Mm }),
        ...given(input.gravelLargestMm, (value) => atMost(LIMITS.gravelLargest, { value })),
        ...given(input.gravelUnder2MmPercent, (value) => atMost(LIMITS.gravelUnder2, { value })),
        ...given(input.gravelUnder1MmPercent, (value) => atMost(LIMITS.gravelUnder1, { value })),
      ]),
    )
  },
})
