import { fail, ok, type Result } from '@swardwright/engine'
import type { HistoryOutcome, KeptHistory } from '@swardwright/journal'
import { weatherProblemWords } from '@swardwright/present'
import { askService } from '../weather/ask.ts'
import { historyOfArchive, historyOfFile, outcomeOf, partOf } from '../weather/history.ts'
import { archiveAddress, hostOf } from '../weather/provider.ts'
import { jsonOf } from '../weather/readAnswer.ts'
import type { CoursePlace } from '../weather/weatherService.ts'
import { courseOf, type Context } from './context.ts'
import type { Handler } from './registrar.ts'

const HISTORY = 'history'

/** Tells the weather ahead and how things stand with it. */
export const readWeather =
  (context: Context): Handler<'weather'> =>
  async ({ params, query }) => {
    const course = await courseOf(context, params.course)
    return course.ok ? ok(await context.weather.weather(params.course, query.kind)) : course
  }

/** Turns the weather service on or off for a course. */
export const chooseWeather =
  (context: Context): Handler<'chooseWeather'> =>
  async ({ params, body }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    await context.weather.choose(params.course, body.on)
    return ok({ on: body.on })
  }

/** Gives the daily record. */
export const readHistoryOf =
  (context: Context): Handler<'history'> =>
  async ({ params, query }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const text = await context.storage.weather.read(params.course, HISTORY)
    if (text === null) return ok({ history: null })
    // Written below, in this shape.
    return ok({ history: partOf(JSON.parse(text) as KeptHistory, query) })
  }

/** Keeps a record that could be read; one that could not leaves the record before in its place. */
const keep = async (
  { storage }: Context,
  course: string,
  result: Result<KeptHistory, string>,
): Promise<HistoryOutcome> => {
  if (result.ok) await storage.weather.write(course, HISTORY, JSON.stringify(result.value))
  return outcomeOf(result)
}

/** A course without a green yet lies nowhere; its record then stands where the file says. */
const NOWHERE: CoursePlace = { latitudeDeg: 0, longitudeDeg: 0, altitudeM: 0 }

/** Takes a file of daily weather in. */
export const uploadHistory =
  (context: Context): Handler<'uploadHistory'> =>
  async ({ params, body }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const place = (await context.weather.placeOf(params.course)) ?? NOWHERE
    return ok(await keep(context, params.course, historyOfFile(body, place, context.clock())))
  }

/** Fetches a record from the archive. */
export const fetchHistory =
  (context: Context): Handler<'fetchHistory'> =>
  async ({ params, body }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    if (body.from > body.to)
      return fail({ type: 'badRequest', where: 'body', field: 'to', expected: 'a day not before `from`' })
    const provider = await context.weather.providerFor(params.course)
    if (provider === null) return ok({ kept: null, why: 'the weather service is off for this course' })
    const place = await context.weather.placeOf(params.course)
    if (place === null) return ok({ kept: null, why: weatherProblemWords({ type: 'noPlace' }, 'UTC') })
    const answer = await askService(archiveAddress(provider, place, body), context.weather.asker)
    const json = answer.ok ? jsonOf(answer.value) : answer
    if (!json.ok) return ok({ kept: null, why: weatherProblemWords(json.error, 'UTC') })
    const read = historyOfArchive(json.value, hostOf(provider), place, context.clock())
    return ok(await keep(context, params.course, read))
  }
