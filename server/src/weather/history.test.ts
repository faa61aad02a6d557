import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { randomCourse } from '@swardwright/engine'
import type { HistoryOutcome, KeptHistory } from '@swardwright/journal'
import { exampleEntry } from '../testing/entries.ts'
import { testServer, type TestServer } from '../testing/testServer.ts'
import { json, text, weatherStub, type WeatherStub } from '../testing/weatherStub.ts'
import { providerOf } from './provider.ts'

let stub: WeatherStub
let server: TestServer
beforeEach(async () => {
  stub = await weatherStub()
  server = await testServer({ weatherProvider: providerOf(stub.address) })
  const value = randomCourse({ seed: 5, greens: 2 }).course
  await server.ask({
    method: 'POST',
    url: '/api/courses/links/entries',
    payload: {
      entries: [
        { ...exampleEntry('courseChanged', 1), body: { changes: [{ part: 'course', do: 'put', value }] } },
      ],
    },
  })
})
afterEach(async () => {
  await server.close()
  await stub.close()
})

const post = async (path: 'history' | 'archive', payload: object, headers = {}) => {
  const { status, text: body } = await server.ask({
    method: 'POST',
    url: `/api/courses/links/weather/${path}`,
    payload,
    headers,
  })
  return { status, outcome: JSON.parse(body) as HistoryOutcome }
}

const kept = async (query = ''): Promise<KeptHistory | null> => {
  const { text: body } = await server.ask({
    method: 'GET',
    url: `/api/courses/links/weather/history${query}`,
  })
  return (JSON.parse(body) as { history: KeptHistory | null }).history
}

/** Five days in the national service's layout: one without a row, one with a word for rain, one repeated. */
const SERVICE = `Station Height: 71 M, Latitude: 53.428, Longitude: -6.241
date,rain,maxtp,mintp,wdsp
01-jan-2024,1.2,9.0,3.0,10
02-jan-2024,wet,9.0,3.0,10
04-jan-2024,0.0,8.0,,10
05-jan-2024,2.5,8.0,1.0,10
05-jan-2024,2.5,8.0,1.0,10
`

describe('the daily record of a course', () => {
  it('is kept from a file, with gaps and refused rows told, and given back whole or in part', async () => {
    const { status, outcome } = await post('history', { name: 'dly.csv', text: SERVICE, columns: null })
    expect(status).toBe(200)
    expect(outcome.why).toBeNull()
    expect(outcome.kept).toMatchObject({
      source: 'file',
      name: 'dly.csv',
      from: '2024-01-01',
      to: '2024-01-05',
      rows: 3,
      station: { latitudeDeg: 53.428, longitudeDeg: -6.241, altitudeM: 71, windHeightM: 10 },
      stationAssumed: false,
      gaps: [
        { column: 'day', from: '2024-01-02', to: '2024-01-03', days: 2 },
        { column: 'minC', from: '2024-01-04', to: '2024-01-04', days: 1 },
      ],
      refused: [
        { row: 4, why: "rain is 'wet', which is no number" },
        { row: 7, why: '2024-01-05 was in row 6 already' },
      ],
      refusedCount: 2,
    })
    expect((await kept())?.columns.rainMm).toEqual([1.2, null, null, 0, 2.5])
    const part = await kept('?from=2024-01-04&to=2030-01-01')
    expect(part).toMatchObject({ from: '2024-01-04', to: '2024-01-05', columns: { rainMm: [0, 2.5] } })
    expect(part?.gaps.map(({ column }) => column)).toEqual(['minC'])
    expect(await kept('?from=2025-01-01')).toBeNull()
  })

  it('is read by a map of its columns, and then stands where the course does', async () => {
    const columns = {
      date: 'Day',
      rainMm: { column: 'Rain', factor: 25.4 },
      minC: { column: 'Low' },
      maxC: { column: 'High' },
      delimiter: ';',
      dateFormat: 'dd/mm/yyyy',
    }
    const { outcome } = await post('history', {
      name: 'own.csv',
      text: 'Day;Rain;Low;High\n1/6/2024;0.5;8;19\n',
      columns,
    })
    expect(outcome.kept).toMatchObject({ from: '2024-06-01', stationAssumed: true })
    expect((await kept())?.columns.rainMm).toEqual([12.7])
  })

  it.each([
    ['', 'the layout is not known; say which column is the day, the rain, the coldest and the warmest'],
    ['date,rain,maxtp,mintp\n', 'there are no rows'],
    [
      'date,rain,maxtp,mintp\nsoon,1,2,1\n',
      "no row could be read; row 2: 'soon' is no day of the calendar written yyyy-mm-dd",
    ],
  ])('is not replaced by a file that can’t be read (%j)', async (file, why) => {
    await post('history', { name: 'dly.csv', text: SERVICE, columns: null })
    expect((await post('history', { name: 'bad.csv', text: file, columns: null })).outcome).toEqual({
      kept: null,
      why,
    })
    expect((await kept())?.name).toBe('dly.csv')
  })

  it('is brought in by those who decide, and read by everybody who works here', async () => {
    const upload = { name: 'dly.csv', text: SERVICE, columns: null }
    for (const [role, status] of [
      ['crew', 403],
      ['committee', 403],
      ['deputy', 200],
    ] as const)
      expect((await post('history', upload, await server.tokenOf(role))).status).toBe(status)
    const { status } = await server.ask({
      method: 'GET',
      url: '/api/courses/links/weather/history',
      headers: await server.tokenOf('committee'),
    })
    expect(status).toBe(200)
  })
})

const DAYS = {
  latitude: 53.7,
  longitude: -4.9,
  elevation: 44,
  daily_units: {
    precipitation_sum: 'mm',
    temperature_2m_min: '°C',
    temperature_2m_max: '°C',
    wind_speed_10m_mean: 'm/s',
    shortwave_radiation_sum: 'MJ/m²',
  },
  daily: {
    time: ['2024-01-01', '2024-01-02', '2024-01-03'],
    precipitation_sum: [0, null, 4.5],
    temperature_2m_min: [1, 2, 3],
    temperature_2m_max: [7, 8, 9],
    wind_speed_10m_mean: [4, 5, 600],
    shortwave_radiation_sum: [2, 2.5, 3],
  },
}

describe('the archive', () => {
  const years = { from: '2024-01-01', to: '2024-01-03' }

  it('gives a record where there is no file, gaps and senseless figures left open', async () => {
    stub.behave(json(DAYS))
    const { outcome } = await post('archive', years)
    const { pathname, searchParams } = new URL(stub.asked[0] ?? '', stub.address)
    expect(pathname).toBe('/v1/archive')
    expect(searchParams.get('start_date')).toBe('2024-01-01')
    expect(searchParams.get('wind_speed_unit')).toBe('ms')
    expect(outcome.kept).toMatchObject({
      source: 'archive',
      rows: 3,
      station: { altitudeM: 44, windHeightM: 10 },
      gaps: [
        { column: 'rainMm', from: '2024-01-02', to: '2024-01-02', days: 1 },
        { column: 'windMPerS', from: '2024-01-03', to: '2024-01-03', days: 1 },
      ],
      refused: [{ row: 3, why: 'wind is 600 m/s; it must be 0 to 60 m/s (is the unit right?)' }],
    })
    expect((await kept())?.columns).toEqual({
      rainMm: [0, null, 4.5],
      minC: [1, 2, 3],
      maxC: [7, 8, 9],
      windMPerS: [4, 5, null],
      radiationMJPerM2: [2, 2.5, 3],
    })
  })

  it.each([
    [
      json({ ...DAYS, daily_units: { ...DAYS.daily_units, temperature_2m_min: '°F' } }),
      'daily_units.temperature_2m_min is °F; °C was asked for',
    ],
    [
      json({ ...DAYS, daily: { time: ['2024-01-01'] } }),
      "the archive's answer has no daily.precipitation_sum",
    ],
    [json({ error: true, reason: 'too early' }, 400), 'the archive refused: too early'],
    [text('<html>'), 'a web page came instead of weather (a log-in page of the network, perhaps)'],
    [text('', 503), 'the weather service failed (HTTP 503)'],
  ])('tells in words why there is none (%#)', async (behaviour, why) => {
    stub.behave(behaviour)
    expect((await post('archive', years)).outcome).toEqual({ kept: null, why })
  })

  it('is not asked while the weather service is off, nor for days in the wrong order', async () => {
    await server.ask({ method: 'POST', url: '/api/courses/links/weather', payload: { on: false } })
    expect((await post('archive', years)).outcome.why).toBe('the weather service is off for this course')
    expect((await post('archive', { from: years.to, to: years.from })).status).toBe(400)
    expect(stub.asked).toEqual([])
  })
})
