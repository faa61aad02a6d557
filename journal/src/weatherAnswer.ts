import * as v from 'valibot'
import { DAILY_COLUMN_NAMES, historyMap, instantSchema, plainDateSchema } from '@swardwright/engine'

/** What a weather service is asked for: the days ahead once, or many times over as an ensemble. */
export const WEATHER_KINDS = ['forecast', 'ensemble'] as const

/** A kind of weather asked for. */
export type WeatherKind = (typeof WEATHER_KINDS)[number]

/**
 * How things stand with the weather of a course.
 * - `off`: the club has not asked for it, so nothing was sent out.
 * - `fresh`: an answer young enough to go by.
 * - `stale`: an older answer; a new one was refused or could not be read.
 * - `offline`: the service can't be reached; there may be an older answer.
 * - `never`: no answer yet, and the last try says why.
 */
export const WEATHER_STATES = ['off', 'fresh', 'stale', 'offline', 'never'] as const

/** How things stand with the weather of a course. */
export type WeatherState = (typeof WEATHER_STATES)[number]

const count = (description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.description(description))

/** Why a weather service gave nothing that can be used. Closed; `present` words it. */
export const weatherProblem = v.variant('type', [
  v.object({ type: v.literal('timedOut'), afterMs: count('Time waited, ms') }),
  v.object({ type: v.literal('unreachable') }),
  v.object({ type: v.literal('status'), status: count('HTTP status') }),
  v.object({ type: v.literal('tooOften'), retryAt: v.nullable(instantSchema) }),
  v.object({ type: v.literal('tooLarge'), maxBytes: count('Most that is read, bytes') }),
  v.object({ type: v.literal('notJson'), what: v.picklist(['page', 'half', 'empty']) }),
  v.object({
    type: v.literal('otherUnit'),
    field: v.string(),
    asked: v.string(),
    received: v.nullable(v.string()),
  }),
  v.object({
    type: v.literal('unreadable'),
    reason: v.pipe(v.string(), v.description('One sentence, without a full stop')),
  }),
  v.object({ type: v.literal('noPlace') }),
])

/** Why a weather service gave nothing that can be used. */
export type WeatherProblem = Readonly<v.InferOutput<typeof weatherProblem>>

const placeSent = v.object({
  latitudeDeg: v.pipe(v.number(), v.description('Degrees north, to two decimals: about a kilometre')),
  longitudeDeg: v.pipe(v.number(), v.description('Degrees east, to two decimals')),
})

/** The weather of a course as the server has it. */
export const weatherAnswer = v.object({
  state: v.picklist(WEATHER_STATES),
  provider: v.pipe(v.nullable(v.string()), v.description('Host that is asked, or would be')),
  fetchedAt: v.pipe(v.nullable(instantSchema), v.description('When the answer below came')),
  placeSent: v.pipe(v.nullable(placeSent), v.description('All that is sent of the club')),
  problem: v.pipe(v.nullable(weatherProblem), v.description('What was wrong with the last try')),
  forecast: v.pipe(
    v.nullable(v.looseObject({ hourly: v.looseObject({ time: v.array(v.string()) }) })),
    v.description('Hourly JSON in the open shape, as it came'),
  ),
})

/** The weather of a course as the server has it. */
export type WeatherAnswer = v.InferOutput<typeof weatherAnswer>

const figures = v.array(v.nullable(v.number()))

/** A row of a file that was not taken, in words. */
const refusedRow = v.object({ row: count('Line in the file, 1 for the first'), why: v.string() })

const dayGap = v.object({
  column: v.picklist(['day', ...DAILY_COLUMN_NAMES]),
  from: plainDateSchema,
  to: plainDateSchema,
  days: count('Days without a figure'),
})

/** A daily record as the server keeps it. */
export const keptHistory = v.object({
  source: v.picklist(['file', 'archive']),
  name: v.pipe(v.string(), v.maxLength(200), v.description('Name of the file, or host of the archive')),
  receivedAt: instantSchema,
  station: v.object({
    latitudeDeg: v.number(),
    longitudeDeg: v.number(),
    altitudeM: v.number(),
    windHeightM: v.number(),
  }),
  stationAssumed: v.pipe(
    v.boolean(),
    v.description('True when the file does not say where the station stands; the place is then the course’s'),
  ),
  from: plainDateSchema,
  to: plainDateSchema,
  rows: count('Days with a row'),
  columns: v.pipe(
    v.partial(
      v.object(
        Object.fromEntries(DAILY_COLUMN_NAMES.map((name) => [name, figures])) as Record<
          (typeof DAILY_COLUMN_NAMES)[number],
          typeof figures
        >,
      ),
    ),
    v.description('One figure a day from `from` to `to`; null where there is none'),
  ),
  gaps: v.array(dayGap),
  refused: v.pipe(v.array(refusedRow), v.description('The first 200 rows or cells that were not taken')),
  refusedCount: count('All rows or cells that were not taken'),
})

/** A daily record as the server keeps it. */
export type KeptHistory = v.InferOutput<typeof keptHistory>

/** What an upload or an archive came to: the record without its figures, or one sentence why there is none. */
export const historyOutcome = v.object({
  kept: v.nullable(v.omit(keptHistory, ['columns'])),
  why: v.pipe(v.nullable(v.string()), v.description('Why nothing was kept')),
})

/** What an upload or an archive came to. */
export type HistoryOutcome = v.InferOutput<typeof historyOutcome>

/** A file of daily weather, with a map of its columns unless it has the layout that is known. */
export const historyUpload = v.object({
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(200), v.description('Name of the file')),
  text: v.pipe(v.string(), v.description('The file itself, as text')),
  columns: v.pipe(
    v.nullable(v.omit(historyMap, ['latitudeDeg', 'longitudeDeg', 'altitudeM'])),
    v.description('Where each column is; null for the layout of the national service'),
  ),
})
