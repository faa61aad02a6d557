import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { choice, figure, quantity, words } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { GROWTH_DEGREE_DAYS_CHECKS, GROWTH_POTENTIAL_CHECKS } from './growth-checks.ts'
import { growthPotentialOf } from './growth-curve.ts'
import { LIMITS } from './limits.ts'

export const airC = (meaning: string) => quantity({ meaning, unit: 'C', symbol: 'T', min: -60, max: 60 })

export const optimumC = quantity({
  meaning: 'Temperature at which the grass grows best',
  unit: 'C',
  symbol: 'To',
  min: 5,
  max: 45,
})

/** What a growth potential (0 to 1) means for opening greens up (CR092, CR093). */
export const standingOfGrowth = (potential: number): 'extremely limited' | 'limited' | 'good' => {
  if (potential <= LIMITS.growthVeryLow.value) return 'extremely limited'
  return potential > LIMITS.growthForDisruption.value ? 'good' : 'limited'
}

/** `growth.potential`: how well the grass can grow at a temperature. */
export const growthPotential = item({
  name: 'growth.potential',
  title: 'Growth potential',
  words:
    'A bell curve of the mean air temperature: 1 at the temperature that the grass likes best, less to both sides. Warm-season grass stays at 1 above it.',
  formula: 'GP = exp(-0.5 ((T - To) / s)^2); cool To 20, s 5.5; warm To 31, s 7, and 1 at T >= To',
  evidence: 'handbook',
  sources: ['woodsScript', 'stowellWarm', 'woodsOptimum2014', 'growthPotentials'],
  notes: [
    'Open greens up with growth potential above 0.5 and rising; at 0.1 or lower growth is extremely limited.',
    'Sources disagree on the warm-season spread: 7 (originators) or 8.5 (Woods). For Poa annua or fescue consider an optimum of 18 C (Woods 2014).',
    'T is the mean of a day, a week or a month; the curve is the same.',
  ],
  inputs: v.strictObject({
    meanC: airC('Mean air temperature'),
    season: choice('Cool-season or warm-season grass', ['cool', 'warm']),
    optimumC: v.optional(optimumC),
    spreadC: v.optional(
      quantity({ meaning: 'Spread of the bell curve', unit: 'C', symbol: 's', min: 0.5, max: 30 }),
    ),
  }),
  outputs: v.strictObject({
    potential: figure({ meaning: 'Growth potential, 0 to 1', unit: '1', symbol: 'GP' }),
    standing: words('extremely limited (0.1 or less), limited, or good for opening greens up (above 0.5)'),
  }),
  checks: GROWTH_POTENTIAL_CHECKS,
  run: (input) => {
    const potential = growthPotentialOf(input)
    return ok({ potential, standing: standingOfGrowth(potential) })
  },
})

/** `growth.degreeDays`: warmth added up. */
export const growthDegreeDays = item({
  name: 'growth.degreeDays',
  title: 'Growing degree days',
  words:
    'For each day take the middle of the lowest and highest temperature, subtract the base, and add up what is above nothing.',
  formula: 'GDD = sum(max(0, (Tmin + Tmax) / 2 - base))',
  evidence: 'handbook',
  sources: ['soldat2013', 'degreeDayNotes'],
  notes: [
    'Always print the base: 0 C for cool-season grass, 10 C for warm. A growth regulator on bent is due again at 200 degree days of base 0 C, about a week in summer and three to four weeks in spring and autumn (Soldat 2013).',
  ],
  inputs: v.strictObject({
    days: v.pipe(
      v.array(
        v.strictObject({
          minC: airC('Lowest air temperature of the day'),
          maxC: airC('Highest air temperature of the day'),
        }),
      ),
      v.maxLength(4000),
      v.description('The days'),
    ),
    baseC: quantity({ meaning: 'Base temperature', unit: 'C', min: -20, max: 40 }),
  }),
  outputs: v.strictObject({ degreeDaysC: figure({ meaning: 'Degree days above the base', unit: 'C d' }) }),
  checks: GROWTH_DEGREE_DAYS_CHECKS,
  run: ({ days, baseC }) => {
    const wrong = days.findIndex((day) => day.minC > day.maxC)
    const day = days[wrong]
    if (day !== undefined)
      return notDefined(
        `days[${wrong}].minC`,
        'C',
        `the lowest temperature of day ${wrong + 1} is ${day.minC} C, above its highest of ${day.maxC} C`,
      )
    return ok({
      degreeDaysC: days.reduce((sum, { minC, maxC }) => sum + Math.max(0, (minC + maxC) / 2 - baseC), 0),
    })
  },
})

/** Growth by temperature. */
export const GROWTH_ITEMS = [growthPotential, growthDegreeDays]
