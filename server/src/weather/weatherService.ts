import {
  fold,
  initialState,
  momentFromMs,
  type WeatherAnswer,
  type WeatherKind,
  type WeatherProblem,
  type WeatherState,
} from '@swardwright/journal'
import * as v from 'valibot'
import { fail, type Result } from '@swardwright/engine'
import type { Storage } from '../storage/storage.ts'
import { askService, type Asker } from './ask.ts'
import {
  hostOf,
  hourlyAddress,
  roundedPlace,
  USUAL_PROVIDER,
  type PlaceSent,
  type Provider,
} from './provider.ts'
import { readHourly } from './readAnswer.ts'

/** An answer is young enough to go by for so long, ms: services renew a forecast every hour or so, an ensemble a few times a day. */
const FRESH_MS: Readonly<Record<WeatherKind, number>> = { forecast: 3_600_000, ensemble: 3 * 3_600_000 }

/** After a failed try the service is left alone this long, ms, unless it asks for longer. */
const REST_MS = 5 * 60_000

/** Longest that a service may ask to be left alone, ms: a day. */
const LONGEST_REST_MS = 24 * 3_600_000

const PAGE = 1000

/** What is kept between requests, for a course and a kind. The answer is kept as it came. */
const kept = v.object({
  fetchedAtMs: v.nullable(v.number()),
  forecast: v.nullable(v.looseObject({ hourly: v.looseObject({ time: v.array(v.string()) }) })),
  triedAtMs: v.number(),
  problem: v.nullable(v.looseObject({ type: v.string() })),
})
type Kept = {
  readonly fetchedAtMs: number | null
  readonly forecast: WeatherAnswer['forecast']
  readonly triedAtMs: number
  readonly problem: WeatherProblem | null
}

/** Where a course lies: the place as it is sent, and its height, which is not. */
export type CoursePlace = PlaceSent & { readonly altitudeM: number }

/** Weather of the courses of one server. */
export type WeatherService = {
  /** How things stand, asking the service first when that is allowed and due. */
  readonly weather: (course: string, kind: WeatherKind) => Promise<WeatherAnswer>
  readonly choose: (course: string, on: boolean) => Promise<void>
  /** How this service asks, for the archive. */
  readonly asker: Asker
  /** The provider, when this course may ask it. */
  readonly providerFor: (course: string) => Promise<Provider | null>
  /** Where the course lies, to two decimals; null while no green has a place. */
  readonly placeOf: (course: string) => Promise<CoursePlace | null>
}

type Parts = {
  readonly storage: Storage
  readonly asker: Asker
  /** From the operator; null when none was named, then the service is off until the manager turns it on. */
  readonly operators: Provider | null
}

const readKept = async (storage: Storage, course: string, kind: WeatherKind): Promise<Kept | null> => {
  const text = await storage.weather.read(course, kind)
  // Written by this very file, so the problem is one of the closed list.
  return text === null ? null : (v.parse(kept, JSON.parse(text)) as Kept)
}

/** When the service may be asked again after a problem, epoch ms. */
const restedAtMs = ({ triedAtMs, problem }: Kept): number => {
  if (problem === null) return triedAtMs
  const asked = problem.type === 'tooOften' && problem.retryAt !== null ? Date.parse(problem.retryAt) : 0
  return Math.max(triedAtMs + REST_MS, Math.min(asked, triedAtMs + LONGEST_REST_MS))
}

const isAway = (problem: WeatherProblem | null): boolean =>
  problem?.type === 'unreachable' || problem?.type === 'timedOut'

const stateOf = (known: Kept | null, kind: WeatherKind, nowMs: number): WeatherState => {
  if (known === null) return 'never'
  if (known.fetchedAtMs !== null && nowMs - known.fetchedAtMs < FRESH_MS[kind]) return 'fresh'
  if (isAway(known.problem)) return 'offline'
  return known.fetchedAtMs === null ? 'never' : 'stale'
}

const isDue = (known: Kept | null, kind: WeatherKind, nowMs: number): boolean =>
  known === null || (stateOf(known, kind, nowMs) !== 'fresh' && nowMs >= restedAtMs(known))

/** Where a course lies by its journal: its first green, as everywhere else. */
const placeIn = async (storage: Storage, course: string): Promise<CoursePlace | null> => {
  let state = initialState
  for (let after = 0; ; after += PAGE) {
    const page = await storage.journal.page(course, after, PAGE)
    state = fold(
      state,
      page.map(({ entry }) => entry),
    )
    if (page.length < PAGE) break
  }
  const { course: facts } = state.facts
  const at = facts?.greens[0]?.at
  return facts === null || at === undefined
    ? null
    : { ...roundedPlace([at[0], at[1]]), altitudeM: facts.altitudeM }
}

/** The weather of the courses of a server: asked for where the club wants it, kept, and told with its age. */
export const weatherService = ({ storage, asker, operators }: Parts): WeatherService => {
  const provider = operators ?? USUAL_PROVIDER
  const underWay = new Map<string, Promise<void>>()

  const isOn = async (course: string): Promise<boolean> => {
    const choice = await storage.weather.read(course, 'choice')
    return choice === null ? operators !== null : choice === 'on'
  }

  const fetchHourly = async (
    course: string,
    kind: WeatherKind,
  ): Promise<Result<NonNullable<WeatherAnswer['forecast']>, WeatherProblem>> => {
    const place = await placeIn(storage, course)
    if (place === null) return fail({ type: 'noPlace' })
    const answer = await askService(hourlyAddress(provider, kind, place), asker)
    return answer.ok ? readHourly(answer.value) : answer
  }

  /** A failed try keeps the answer before. */
  const renew = async (course: string, kind: WeatherKind): Promise<void> => {
    const before = await readKept(storage, course, kind)
    const got = await fetchHourly(course, kind)
    const nowMs = asker.clock()
    const now: Kept = got.ok
      ? { fetchedAtMs: nowMs, forecast: got.value, triedAtMs: nowMs, problem: null }
      : {
          fetchedAtMs: before?.fetchedAtMs ?? null,
          forecast: before?.forecast ?? null,
          triedAtMs: nowMs,
          problem: got.error,
        }
    await storage.weather.write(course, kind, JSON.stringify(now))
  }

  /** However many ask at once, the service is asked once. */
  const renewOnce = (course: string, kind: WeatherKind): Promise<void> => {
    const key = `${kind} ${course}`
    const going = underWay.get(key)
    if (going !== undefined) return going
    const started = renew(course, kind).finally(() => underWay.delete(key))
    underWay.set(key, started)
    return started
  }

  const placeSent = async (course: string): Promise<PlaceSent | null> => {
    const place = await placeIn(storage, course)
    return place === null ? null : { latitudeDeg: place.latitudeDeg, longitudeDeg: place.longitudeDeg }
  }

  return {
    asker,
    weather: async (course, kind) => {
      const on = await isOn(course)
      if (on && isDue(await readKept(storage, course, kind), kind, asker.clock()))
        await renewOnce(course, kind)
      const known = await readKept(storage, course, kind)
      return {
        state: on ? stateOf(known, kind, asker.clock()) : 'off',
        provider: hostOf(provider),
        fetchedAt: known?.fetchedAtMs == null ? null : momentFromMs(known.fetchedAtMs),
        placeSent: await placeSent(course),
        problem: on ? (known?.problem ?? null) : null,
        forecast: known?.forecast ?? null,
      }
    },
    choose: (course, on) => storage.weather.write(course, 'choice', on ? 'on' : 'off'),
    providerFor: async (course) => ((await isOn(course)) ? provider : null),
    placeOf: (course) => placeIn(storage, course),
  }
}
