import * as v from 'valibot'
import { plainDateSchema } from '@swardwright/engine'
import { measured } from './measured.ts'
import { momentSchema } from './moment.ts'

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
    start: momentSchema,
    finish: momentSchema,
    mmPerH: measured('Rain', 'mm/h', 0, 200),
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
  mmPerH: v.optional(measured('Rain', 'mm/h', 0, 200)),
})

/** Body of `rainEnded`: `at` of the entry tells when. */
export const rainEndedBody = v.strictObject({})
