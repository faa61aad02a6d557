import * as v from 'valibot'
import { instantSchema, plainDateSchema } from '@swardwright/engine'

/**
 * A forecast as it was received: hourly JSON in the open shape (`hourly.time`, `hourly.precipitation`, ...). Only what makes it one is
 * checked here; the engine's reader turns it into columns and tells what is missing.
 */
const openForecast = v.looseObject({
  hourly: v.looseObject({ time: v.pipe(v.array(v.union([v.string(), v.number()])), v.minLength(1)) }),
})

/** Body of `forecastReceived`: replaces the forecast before, and rain typed in before it. */
export const forecastReceivedBody = v.strictObject({
  source: v.pipe(v.picklist(['file', 'service']), v.description('Read from a file, or fetched')),
  name: v.optional(
    v.pipe(v.string(), v.maxLength(200), v.description('Name of the file or address of the service')),
  ),
  forecast: openForecast,
})

const spell = v.pipe(
  v.strictObject({
    start: instantSchema,
    finish: instantSchema,
    mmPerH: v.pipe(v.number(), v.minValue(0), v.maxValue(200), v.description('Rain, mm/h')),
  }),
  v.check((rain) => Date.parse(rain.start) < Date.parse(rain.finish), 'a finish after the start'),
)

/** Body of `rainTyped`: on these days of the course's clock it rains in these spells and at no other time, whatever the forecast says. */
export const rainTypedBody = v.pipe(
  v.strictObject({
    from: plainDateSchema,
    to: plainDateSchema,
    spells: v.pipe(v.array(spell), v.maxLength(100)),
  }),
  v.check((body) => body.from <= body.to, 'a last day not before the first'),
)

/** Body of `rainBegan`: `at` of the entry tells when. */
export const rainBeganBody = v.strictObject({
  mmPerH: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(200), v.description('Rain, mm/h'))),
})

/** Body of `rainEnded`: `at` of the entry tells when. */
export const rainEndedBody = v.strictObject({})
