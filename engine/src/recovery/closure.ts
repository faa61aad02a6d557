import * as v from 'valibot'
import { airC, optimumC } from '../agronomy/growth.ts'
import { item } from '../catalogue/item.ts'
import { choice, figure, figureOrNull, quantity, wordsOrNull } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { CLOSURE_CHECKS } from './closure-checks.ts'
import { closedShare, daysToGrow, edgeGrowthByDayMm, OPENING_KINDS, RATE_SPREAD } from './closure-rate.ts'

const share = (meaning: string) => v.optional(quantity({ meaning, unit: '1', min: 0, max: 1 }), 1)

const byDay = (meaning: string) =>
  v.pipe(v.array(figure({ meaning, unit: '1' })), v.description(`${meaning}, at the end of each day given`))

/** Growth of the edges on days that go slow, as expected, and fast. */
const paced = (byDayMm: readonly number[]) => {
  const times = (factor: number) => byDayMm.map((mm) => mm * factor)
  return { slow: times(1 - RATE_SPREAD), expected: byDayMm, fast: times(1 + RATE_SPREAD) }
}

/** `recovery.closure`: when holes and grooves have grown over. */
export const recoveryClosure = item({
  name: 'recovery.closure',
  title: 'Days until holes or grooves have closed',
  words:
    "Grass grows in from the edge of the hole. Each day adds a distance by that day's growth; the hole is closed when the edges have gone half its width. Twice the diameter takes twice as long.",
  formula:
    'v = v0 f sqrt(GP light moisture) mm a day; closed when sum(v) = d / 2; v0: core 0.6, solid 1.2, groove 0.071; low and high: v x 1.35 and v x 0.65',
  evidence: 'our assumption',
  sources: ['ownAssumption', 'landreth2008', 'ervinNichols2010', 'clemsonTines', 'woodsScript'],
  notes: [
    'A prior, fitted to the read cases, to be replaced by the records of the club: its spread is about 35 % to both sides.',
    'Time by diameter is measured: 1/4 in cores closed in half the time of 1/2 in, those in half the time of a deep verticut; spacing had no effect (Landreth, Karcher & Richardson 2008).',
    'Sources disagree on grooves: Virginia had verticut alone back in 27.5 days, among the fastest; Arkansas found it slowest. No one ranking is built in beyond the slower rate of grooves.',
    'Closed is not the same as back in play: rolling true, cover at target and speed are judged apart. Nitrogen is in the factor: no measured effect of its rate on closure was found.',
  ],
  inputs: v.strictObject({
    diameterMm: quantity({
      meaning: 'Diameter of the hole, or width of the groove',
      unit: 'mm',
      symbol: 'd',
      min: 0.2,
      max: 100,
    }),
    kind: choice('What closes: a hole that a core left, a hole of a solid tine, or a groove', OPENING_KINDS),
    days: v.pipe(
      v.array(
        v.strictObject({
          meanC: airC('Mean air temperature of the day'),
          lightShare: share('Share of full light (shade)'),
          moistureShare: share('Share of ample moisture'),
        }),
      ),
      v.minLength(1),
      v.maxLength(400),
      v.description('Days from the work on'),
    ),
    factor: v.optional(
      quantity({
        meaning: 'Speed of this green against the prior',
        unit: '1',
        symbol: 'f',
        min: 0.1,
        max: 10,
      }),
      1,
    ),
    season: v.optional(choice('Cool-season or warm-season grass', ['cool', 'warm']), 'cool'),
    optimumC: v.optional(optimumC),
  }),
  outputs: v.strictObject({
    daysLow: figureOrNull({ meaning: 'Days until closed, if it goes fast', unit: 'd' }),
    daysMedian: figureOrNull({ meaning: 'Days until closed, as expected', unit: 'd' }),
    daysHigh: figureOrNull({ meaning: 'Days until closed, if it goes slowly', unit: 'd' }),
    reason: wordsOrNull('Why a number of days is missing'),
    coverByDay: byDay('Share of the opening grown over, as expected'),
    coverByDayLow: byDay('Share of the opening grown over, if it goes slowly'),
    coverByDayHigh: byDay('Share of the opening grown over, if it goes fast'),
  }),
  checks: CLOSURE_CHECKS,
  run: ({ diameterMm, kind, days, ...conditions }) => {
    const pace = paced(edgeGrowthByDayMm(days, { kind, ...conditions }))
    const daysOf = (byDayMm: readonly number[]) => daysToGrow(byDayMm, diameterMm / 2)
    const coverOf = (byDayMm: readonly number[]) => byDayMm.map((mm) => closedShare(kind, diameterMm, mm))
    const daysHigh = daysOf(pace.slow)
    return ok({
      daysLow: daysOf(pace.fast),
      daysMedian: daysOf(pace.expected),
      daysHigh,
      reason:
        daysHigh === null
          ? `the ${days.length} days given are too few for the opening to close at the slow end`
          : null,
      coverByDay: coverOf(pace.expected),
      coverByDayLow: coverOf(pace.slow),
      coverByDayHigh: coverOf(pace.fast),
    })
  },
})

/** When greens come back. */
export const RECOVERY_ITEMS = [recoveryClosure]
