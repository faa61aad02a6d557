import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { randomCourse } from '@swardwright/engine'
import { requestFor, type BodyOf, type WeatherAnswer, type WeatherProblem } from '@swardwright/journal'
import { NOW_MS, exampleEntry } from '../testing/entries.ts'
import { testServer, type TestServer } from '../testing/testServer.ts'
import {
  breakOff,
  endless,
  hang,
  hangHalfway,
  hourlyJson,
  json,
  text,
  weatherStub,
  type Behaviour,
  type WeatherStub,
} from '../testing/weatherStub.ts'
import { providerOf } from './provider.ts'

/** Long enough for a busy machine; what never answers is waited for shorter, since its test waits it out. */
const PATIENCE = { timeOutMs: 30_000, tries: 2, pauseMs: 1, maxBytes: 400_000 } as const

let stub: WeatherStub
let server: TestServer
let nowMs: number

const changed: BodyOf<'courseChanged'> = {
  changes: [{ part: 'course', do: 'put', value: randomCourse({ seed: 5, greens: 2 }).course }],
}

/** A server with the course `links`, which has two greens; on when the operator has named the stub. */
const serve = async (named: boolean, timeOutMs: number = PATIENCE.timeOutMs): Promise<TestServer> => {
  const made = await testServer({
    clock: () => nowMs,
    weatherPatience: { ...PATIENCE, timeOutMs },
    weatherProvider: named ? providerOf(stub.address) : null,
  })
  await made.ask({
    method: 'POST',
    url: '/api/courses/links/entries',
    payload: { entries: [{ ...exampleEntry('courseChanged', 1), body: changed }] },
  })
  return made
}

beforeEach(async () => {
  nowMs = NOW_MS
  stub = await weatherStub()
  server = await serve(true)
})
afterEach(async () => {
  await server.close()
  await stub.close()
})

const read = async (kind: 'forecast' | 'ensemble' = 'forecast', from = server): Promise<WeatherAnswer> => {
  const { method, url } = requestFor('weather', { params: { course: 'links' }, query: { kind } })
  const { status, text: body } = await from.ask({ method, url })
  expect(status).toBe(200)
  return JSON.parse(body) as WeatherAnswer
}

const MINUTE = 60_000

describe('the weather of a course', () => {
  it('is asked for once, kept, and asked for again when it is an hour old', async () => {
    stub.behave(json(hourlyJson('2026-08-10', 48)))
    const first = await read()
    expect(first).toMatchObject({ state: 'fresh', problem: null, fetchedAt: new Date(NOW_MS).toISOString() })
    expect(first.forecast?.hourly.time).toHaveLength(48)
    nowMs += 59 * MINUTE
    expect((await read()).state).toBe('fresh')
    expect(stub.asked).toHaveLength(1)
    nowMs += 2 * MINUTE
    stub.behave(json(hourlyJson('2026-08-11', 24)))
    expect((await read()).forecast?.hourly.time[0]).toBe('2026-08-11T00:00')
    expect(stub.asked).toHaveLength(2)
  })

  it('tells the service nothing but the place to two decimals, and asks for units and UTC by name', async () => {
    stub.behave(json(hourlyJson('2026-08-10', 24)))
    const { placeSent, provider } = await read()
    const [longitude = 0, latitude = 0] = randomCourse({ seed: 5, greens: 2 }).course.greens[0]?.at ?? []
    expect(placeSent?.latitudeDeg).toBe(Number(latitude.toFixed(2)))
    expect(provider).toBe(new URL(stub.address).host)
    const { pathname, searchParams } = new URL(stub.asked[0] ?? '', stub.address)
    expect(pathname).toBe('/v1/forecast')
    expect(Object.fromEntries(searchParams)).toEqual({
      latitude: latitude.toFixed(2).replace(/\.?0+$/u, ''),
      longitude: longitude.toFixed(2).replace(/\.?0+$/u, ''),
      temperature_unit: 'celsius',
      wind_speed_unit: 'ms',
      precipitation_unit: 'mm',
      timezone: 'GMT',
      hourly: 'precipitation,temperature_2m,dew_point_2m,wind_speed_10m,wind_gusts_10m,shortwave_radiation',
      past_days: '1',
      forecast_days: '14',
    })
  })

  it('asks for the ensemble apart, and takes units of members from the plain column', async () => {
    const rain = Array.from({ length: 24 }, () => 0)
    stub.behave(json(hourlyJson('2026-08-10', 24, { hourly: { precipitation_member01: rain } })))
    expect((await read('ensemble')).state).toBe('fresh')
    expect(new URL(stub.asked[0] ?? '', stub.address).pathname).toBe('/v1/ensemble')
  })

  it('asks once, however many wait for it', async () => {
    stub.behave(json(hourlyJson('2026-08-10', 24)))
    const answers = await Promise.all(Array.from({ length: 5 }, () => read()))
    expect(new Set(answers.map(({ state }) => state))).toEqual(new Set(['fresh']))
    expect(stub.asked).toHaveLength(1)
  })

  it('keeps gaps in a column as they are', async () => {
    const holes = [0.3, null, null, ...Array.from({ length: 21 }, () => 0)]
    stub.behave(json(hourlyJson('2026-08-10', 24, { hourly: { precipitation: holes } })))
    const { state, forecast } = await read()
    expect(state).toBe('fresh')
    expect(forecast?.hourly['precipitation']).toEqual(holes)
  })

  it('sends nothing out while nobody has turned it on, and starts and stops at the manager’s word', async () => {
    const quiet = await serve(false)
    expect(await read('forecast', quiet)).toMatchObject({ state: 'off', forecast: null })
    await quiet.close()
    const choose = async (on: boolean, headers = {}) =>
      (await server.ask({ method: 'POST', url: '/api/courses/links/weather', payload: { on }, headers }))
        .status
    stub.behave(json(hourlyJson('2026-08-10', 24)))
    expect(await choose(false)).toBe(200)
    expect((await read()).state).toBe('off')
    expect(stub.asked).toHaveLength(0)
    expect(await choose(true, await server.tokenOf('crew'))).toBe(403)
    expect(await choose(true)).toBe(200)
    expect((await read()).state).toBe('fresh')
  })

  it('says that a course without a green lies nowhere', async () => {
    await server.storage.journal.addCourse({ id: 'empty', name: 'Empty' })
    const { body } = await server.ask({ method: 'GET', url: '/api/courses/empty/weather' })
    expect(body).toMatchObject({ state: 'never', problem: { type: 'noPlace' }, placeSent: null })
    expect(stub.asked).toHaveLength(0)
  })
})

type Fault = readonly [name: string, behaviour: Behaviour, problem: WeatherProblem, tries: number]

const HANG_MS = 3_000

const FAULTS: readonly Fault[] = [
  ['a server that hangs', hang, { type: 'timedOut', afterMs: HANG_MS }, 1],
  ['a server that hangs half-way', hangHalfway, { type: 'timedOut', afterMs: HANG_MS }, 1],
  ['a line that breaks', breakOff, { type: 'unreachable' }, 2],
  ['HTTP 500', text('oops', 500), { type: 'status', status: 500 }, 2],
  ['HTTP 404', text('no such page', 404), { type: 'status', status: 404 }, 1],
  ['half a JSON', text('{"hourly":{"time":["2026-08-1'), { type: 'notJson', what: 'half' }, 1],
  ['a log-in page', text('<!doctype html><title>Guest Wi-Fi</title>'), { type: 'notJson', what: 'page' }, 1],
  ['nothing', text(''), { type: 'notJson', what: 'empty' }, 1],
  [
    'HTTP 429 with a time',
    text('', 429, { 'retry-after': '1800' }),
    { type: 'tooOften', retryAt: new Date(NOW_MS + 1_800_000).toISOString() },
    1,
  ],
  ['HTTP 429 without', text('', 429), { type: 'tooOften', retryAt: null }, 1],
  ['an endless answer', endless, { type: 'tooLarge', maxBytes: PATIENCE.maxBytes }, 1],
  [
    'an answer that says it is huge',
    (_request, response) => {
      response.writeHead(200, { 'content-length': '900000' }).flushHeaders()
    },
    { type: 'tooLarge', maxBytes: PATIENCE.maxBytes },
    1,
  ],
  [
    'inches',
    json(hourlyJson('2026-08-10', 24, { units: { precipitation: 'inch' } })),
    { type: 'otherUnit', field: 'hourly_units.precipitation', asked: 'mm', received: 'inch' },
    1,
  ],
  [
    'an unnamed unit',
    json(hourlyJson('2026-08-10', 24, { units: { wind_speed_10m: undefined } })),
    { type: 'otherUnit', field: 'hourly_units.wind_speed_10m', asked: 'm/s', received: null },
    1,
  ],
  [
    'a refusal with its reason',
    json({ error: true, reason: 'Latitude must be in range' }, 400),
    { type: 'unreadable', reason: 'the weather service refused: Latitude must be in range' },
    1,
  ],
]

describe('a weather service that fails', () => {
  it.each(FAULTS)(
    '%s is told by name, and what was there before is kept',
    async (_, behaviour, problem, tries) => {
      if (problem.type === 'timedOut') {
        await server.close()
        server = await serve(true, HANG_MS)
      }
      stub.behave(behaviour)
      const away = problem.type === 'unreachable' || problem.type === 'timedOut'
      expect(await read()).toMatchObject({ state: away ? 'offline' : 'never', problem, forecast: null })
      expect(stub.asked).toHaveLength(tries)

      nowMs += 24 * 60 * MINUTE
      stub.behave(json(hourlyJson('2026-08-10', 24)))
      expect((await read()).state).toBe('fresh')

      nowMs += 120 * MINUTE
      stub.behave(behaviour)
      const later = await read()
      expect(later).toMatchObject({
        state: away ? 'offline' : 'stale',
        problem: { type: problem.type },
        fetchedAt: new Date(NOW_MS + 24 * 60 * MINUTE).toISOString(),
      })
      expect(later.forecast?.hourly.time).toHaveLength(24)
      expect(server.logged).toEqual([])
    },
  )

  it('is tried once more at once when it stumbles, and then left alone for five minutes', async () => {
    stub.behave(text('oops', 503), json(hourlyJson('2026-08-10', 24)))
    expect((await read()).state).toBe('fresh')
    expect(stub.asked).toHaveLength(2)
    nowMs += 61 * MINUTE
    stub.behave(text('oops', 503))
    expect((await read()).state).toBe('stale')
    expect(stub.asked).toHaveLength(4)
    nowMs += 4 * MINUTE
    await read()
    expect(stub.asked).toHaveLength(4)
    nowMs += 2 * MINUTE
    await read()
    expect(stub.asked).toHaveLength(6)
  })

  it('is left alone as long as it asks, a day at most', async () => {
    stub.behave(text('', 429, { 'retry-after': '1800' }))
    await read()
    nowMs += 29 * MINUTE
    await read()
    expect(stub.asked).toHaveLength(1)
    nowMs += 2 * MINUTE
    stub.behave(text('', 429, { 'retry-after': 'Fri, 01 Jan 2100 00:00:00 GMT' }))
    await read()
    expect(stub.asked).toHaveLength(2)
    nowMs += 25 * 60 * MINUTE
    await read()
    expect(stub.asked).toHaveLength(3)
  })
})
