import type { PrescriptionGroup } from '../planning/prescription.ts'
import { addDays } from '../time/calendar.ts'
import { daysAhead } from '../weather/days-ahead.ts'
import type { WeatherHours } from '../weather/hours.ts'
import { daysToGrow, edgeGrowthByDayMm, RATE_SPREAD, type OpeningKind } from './closure-rate.ts'

/** Days looked ahead: holes of December close only in spring. */
const DAYS_MAX = 180

/** Common practice, no source: small holes in growing weather are good again after 7 to 10 days, and two weeks at most. */
const USUAL_DAYS = { low: 7, high: 14 } as const

/** What a chain leaves open on a green: holes by their diameter, grooves by their width, mm. */
export type LeftOpen = { readonly kind: OpeningKind; readonly widthMm: number }

/** When a green is expected back. `to` is null where the grass grows too slowly to say. */
export type ExpectedBack = {
  /** First day on which it may be back, if the grass goes fast. */
  readonly from: string
  /** The day by which it should be, if the grass goes slowly. */
  readonly to: string | null
  /** `closure`: from the growth in the weather known; `usual`: no weather is known, so common practice. */
  readonly by: 'closure' | 'usual'
}

/** The holes and grooves that a group of the prescription leaves. */
export const leftOpenBy = (group: PrescriptionGroup): readonly LeftOpen[] =>
  group.chain.flatMap(({ tines, blades }): readonly LeftOpen[] => [
    ...(tines === undefined
      ? []
      : [
          {
            kind: tines.coreDiameterMm > 0 ? ('core' as const) : ('solid' as const),
            widthMm: tines.holeDiameterMm,
          },
        ]),
    ...(blades === undefined ? [] : [{ kind: 'groove' as const, widthMm: blades.bladeWidthMm }]),
  ])

/** Mean temperature of each day from `from` on, C: as forecast, and beyond it the mean of what is known. Null where nothing is. */
const meansFrom = (
  weather: WeatherHours | null,
  from: string,
  timeZone: string,
): readonly number[] | null => {
  if (weather === null) return null
  const known = weather.temperatureC.filter((value) => !Number.isNaN(value))
  if (known.length === 0) return null
  const mean = known.reduce((sum, value) => sum + value, 0) / known.length
  return daysAhead(weather, { from, days: DAYS_MAX, timeZone }).map((day) => day.meanC ?? mean)
}

/**
 * When a green that was finished on a day is expected back: when the slowest of its holes and grooves have closed (`recovery.closure`,
 * cool-season grass, no shade), each a third quicker or slower. Null for a group that opens nothing: such a green was never away.
 * Weather beyond the forecast is taken as warm as the forecast is on the whole; in two weeks of season that moves the day less than the spread.
 */
export const expectedBack = (wanted: {
  readonly group: PrescriptionGroup
  /** Day on which the green was, or will be, finished. */
  readonly finished: string
  readonly weather: WeatherHours | null
  readonly timeZone: string
}): ExpectedBack | null => {
  const { group, finished, weather, timeZone } = wanted
  const openings = leftOpenBy(group)
  if (openings.length === 0) return null
  const means = meansFrom(weather, addDays(finished, 1), timeZone)
  if (means === null)
    return { from: addDays(finished, USUAL_DAYS.low), to: addDays(finished, USUAL_DAYS.high), by: 'usual' }
  const days = means.map((meanC) => ({ meanC }))
  const closes = (factor: number): number | null =>
    openings.reduce<number | null>((slowest, { kind, widthMm }) => {
      const took = daysToGrow(edgeGrowthByDayMm(days, { kind, season: 'cool', factor }), widthMm / 2)
      return took === null || slowest === null ? null : Math.max(slowest, took)
    }, 0)
  const [fast, slow] = [closes(1 + RATE_SPREAD), closes(1 - RATE_SPREAD)]
  return {
    from: addDays(finished, Math.ceil(fast ?? DAYS_MAX)),
    to: slow === null ? null : addDays(finished, Math.ceil(slow)),
    by: 'closure',
  }
}
