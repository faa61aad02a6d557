import { describe, expect, it } from 'vitest'
import { readForecast, readForecastText, type Forecast } from './forecast.ts'
import { HOUR_MS } from './hours.ts'

const read = (json: unknown): Forecast => {
  const result = readForecast(json)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** The shape of the open hourly API's documentation (open-meteo.com/en/docs), shortened to a few hours; values invented. */
const ANSWER = {
  latitude: 56.2,
  longitude: -3.1,
  elevation: 40,
  utc_offset_seconds: 3600,
  timezone: 'Europe/London',
  hourly_units: { time: 'iso8601', temperature_2m: '°C', precipitation: 'mm', wind_speed_10m: 'km/h' },
  hourly: {
    time: ['2026-08-10T13:00', '2026-08-10T14:00', '2026-08-10T15:00', '2026-08-10T16:00'],
    temperature_2m: [18, 20, 19, 17],
    precipitation: [0, 0, 0.6, 1.2],
    wind_speed_10m: [9, 18, 36, 18],
  },
}

const hourStarting = (forecast: Forecast, iso: string): number =>
  (Date.parse(iso) - forecast.weather.startMs) / HOUR_MS

describe('an hourly forecast', () => {
  it('puts the rain labelled 15:00 into the hour from 14:00 to 15:00 of the club', () => {
    const forecast = read(ANSWER)
    expect(forecast.weather.rainMm[hourStarting(forecast, '2026-08-10T14:00:00+01:00')]).toBe(0.6)
    expect(forecast.weather.rainMm[hourStarting(forecast, '2026-08-10T13:00:00+01:00')]).toBe(0)
  })

  it('takes temperature and wind as the mean of both ends of the hour', () => {
    const forecast = read(ANSWER)
    const h = hourStarting(forecast, '2026-08-10T14:00:00+01:00')
    expect(forecast.weather.temperatureC[h]).toBe(19.5)
    // 18 and 36 km/h are 5 and 10 m/s.
    expect(forecast.weather.windMPerS[h]).toBe(7.5)
  })

  it('says what it found, what it did not, and where the cell is', () => {
    const forecast = read(ANSWER)
    expect(forecast).toMatchObject({ latitudeDeg: 56.2, altitudeM: 40, gaps: [], wasUnsorted: false })
    expect(forecast.columns).toEqual(['precipitation', 'temperature_2m', 'wind_speed_10m'])
    expect([...forecast.weather.gustMPerS]).toEqual([NaN, NaN, NaN, NaN])
  })

  it.each([
    ['km/h', 36, 10],
    ['m/s', 10, 10],
    ['mph', 10, 4.4704],
    ['kn', 10, 5.144444444],
  ])('reads wind in %s', (unit, value, expected) => {
    const { weather } = read({
      hourly_units: { wind_speed_10m: unit },
      hourly: { time: [0], wind_speed_10m: [value] },
    })
    expect(weather.windMPerS[0]).toBeCloseTo(expected, 8)
  })

  it('reads inches and degrees Fahrenheit', () => {
    const { weather } = read({
      hourly_units: { precipitation: 'inch', temperature_2m: '°F', dew_point_2m: '°F' },
      hourly: { time: [0], precipitation: [0.1], temperature_2m: [68], dew_point_2m: [50] },
    })
    expect(weather.rainMm[0]).toBeCloseTo(2.54, 10)
    expect(weather.temperatureC[0]).toBeCloseTo(20, 10)
    expect(weather.dewPointC[0]).toBeCloseTo(10, 10)
  })

  it('takes the documented units where none are named and says so', () => {
    const forecast = read({ hourly: { time: [0], wind_speed_10m: [36] } })
    expect(forecast.weather.windMPerS[0]).toBe(10)
    expect(forecast.assumedUnits).toEqual(['wind_speed_10m'])
  })

  it('refuses a unit it does not know, with those it does', () => {
    expect(readForecast({ ...ANSWER, hourly_units: { wind_speed_10m: 'furlong/fortnight' } })).toMatchObject({
      ok: false,
      error: {
        type: 'unknownUnit',
        field: 'hourly_units.wind_speed_10m',
        accepted: ['km/h', 'm/s', 'mph', 'mp/h', 'kn'],
      },
    })
  })

  it('works out the dew point from humidity where the API gives only that', () => {
    const { weather } = read({
      hourly_units: { temperature_2m: '°C', relative_humidity_2m: '%' },
      hourly: { time: [0], temperature_2m: [25], relative_humidity_2m: [54] },
    })
    // FAO-56 table 2.3: e(25) = 3.168 kPa; 54 % of it is 1.711; table 2.3 has 1.705 at 15.0 and 1.761 at 15.5, so 15.05.
    expect(weather.dewPointC[0]).toBeCloseTo(15.05, 1)
  })

  it('reads an ensemble as members, the control run first', () => {
    const { weather } = read({
      hourly: {
        time: ['2026-08-10T00:00', '2026-08-10T01:00'],
        precipitation: [0, 1],
        precipitation_member02: [0, 3],
        precipitation_member01: [0, 2],
        shortwave_radiation: [0, 50],
      },
    })
    expect(weather.members).toBe(3)
    expect([...weather.rainMm]).toEqual([0, 1, 0, 2, 0, 3])
    expect([...weather.radiationWPerM2]).toEqual([0, 50, 0, 50, 0, 50])
  })
})

describe('times of a forecast', () => {
  const rainAt = (time: readonly unknown[], more: object = {}): Forecast =>
    read({ ...more, hourly: { time, precipitation: time.map((_, i) => i) } })
  const endOf = (forecast: Forecast, value: number): string =>
    new Date(forecast.weather.startMs + (forecast.weather.rainMm.indexOf(value) + 1) * HOUR_MS).toISOString()

  it('reads unix seconds, an offset, and Z', () => {
    expect(endOf(rainAt([1_785_600_000]), 0)).toBe('2026-08-01T16:00:00.000Z')
    expect(endOf(rainAt(['2026-08-01T17:00+01:00']), 0)).toBe('2026-08-01T16:00:00.000Z')
    expect(endOf(rainAt(['2026-08-01T16:00Z'], { utc_offset_seconds: 3600 }), 0)).toBe(
      '2026-08-01T16:00:00.000Z',
    )
  })

  it('keeps the one offset of the API over a summer-time change', () => {
    const time = Array.from({ length: 6 }, (_, i) => `2026-10-25T0${i}:00`)
    const forecast = rainAt(time, { timezone: 'Europe/London', utc_offset_seconds: 3600 })
    expect(forecast.gaps).toEqual([])
    expect(endOf(forecast, 5)).toBe('2026-10-25T04:00:00.000Z')
  })

  it('reads a wall clock that repeats its autumn hour or skips one in spring', () => {
    const autumn = ['00:00', '01:00', '01:00', '02:00', '03:00'].map((t) => `2026-10-25T${t}`)
    const spring = ['00:00', '02:00', '03:00'].map((t) => `2026-03-29T${t}`)
    for (const offset of [undefined, 0, 3600]) {
      const zone = {
        timezone: 'Europe/London',
        ...(offset === undefined ? {} : { utc_offset_seconds: offset }),
      }
      const back = rainAt(autumn, zone)
      expect(back.repeatedMs).toEqual([])
      expect(endOf(back, 0)).toBe('2026-10-24T23:00:00.000Z')
      expect(endOf(back, 4)).toBe('2026-10-25T03:00:00.000Z')
      const on = rainAt(spring, zone)
      expect(on.gaps).toEqual([])
      expect(endOf(on, 2)).toBe('2026-03-29T02:00:00.000Z')
    }
  })

  it('puts rows in order, keeps the first of two, and leaves a hole open', () => {
    const forecast = rainAt(['2026-08-01T03:00', '2026-08-01T00:00', '2026-08-01T01:00', '2026-08-01T01:00'])
    expect(forecast.wasUnsorted).toBe(true)
    expect(forecast.repeatedMs).toEqual([Date.parse('2026-08-01T01:00Z')])
    expect([...forecast.weather.rainMm]).toEqual([1, 2, NaN, 0])
    const hole = Date.parse('2026-08-01T02:00Z')
    expect(forecast.gaps).toEqual([{ column: 'time', fromMs: hole, toMs: hole, why: 'noRow' }])
  })

  it.each([
    [['2026-08-01T00:00', 'soon'], { type: 'badTime', row: 1 }],
    [['2026-02-30T00:00'], { type: 'badTime', row: 0 }],
    [['2026-08-01T00:00', '2026-08-01T00:30'], { type: 'notHourly', row: 1 }],
    [['1826-08-01T00:00', '2026-08-01T00:00'], { type: 'tooLong' }],
  ])('refuses %j', (time, error) => {
    expect(readForecast({ hourly: { time, precipitation: [] } })).toMatchObject({ ok: false, error })
  })
})

describe('a broken answer', () => {
  it('is refused in words when it is half a JSON', () => {
    const half = JSON.stringify(ANSWER).slice(0, 150)
    expect(readForecastText(half)).toMatchObject({ ok: false, error: { type: 'notJson', length: 150 } })
  })

  it.each([
    [null, { type: 'wrongShape', field: '' }],
    [[ANSWER], { type: 'wrongShape', field: '', received: 'a list of 1' }],
    [
      { error: true, reason: 'Latitude must be in range' },
      { type: 'refused', reason: 'Latitude must be in range' },
    ],
    [{}, { type: 'wrongShape', field: 'hourly' }],
    [{ hourly: { time: [] } }, { type: 'wrongShape', field: 'hourly.time' }],
    [{ hourly: { time: [0] } }, { type: 'noColumns' }],
    [{ hourly: { time: [0], precipitation: 4 } }, { type: 'notAColumn', field: 'hourly.precipitation' }],
    [{ hourly: { time: [0], precipitation: [1, 2] } }, { type: 'columnTooLong', length: 2, expected: 1 }],
    [{ timezone: 'Europe/Atlantis', hourly: { time: [0], precipitation: [1] } }, { type: 'unknownTimeZone' }],
    [{ utc_offset_seconds: 1e9, hourly: { time: [0], precipitation: [1] } }, { type: 'wrongShape' }],
  ])('%j', (json, error) => {
    expect(readForecast(json)).toMatchObject({ ok: false, error })
  })

  it('keeps the good part of a column and lists nulls, words, nonsense and a short end', () => {
    const forecast = read({
      hourly: { time: [0, 3600, 7200, 10_800, 14_400, 18_000], precipitation: [1, null, null, 'x', -4] },
    })
    expect([...forecast.weather.rainMm]).toEqual([1, NaN, NaN, NaN, NaN, NaN])
    expect(forecast.gaps).toEqual([
      { column: 'precipitation', fromMs: HOUR_MS, toMs: 2 * HOUR_MS, why: 'null' },
      { column: 'precipitation', fromMs: 3 * HOUR_MS, toMs: 3 * HOUR_MS, why: 'notANumber' },
      { column: 'precipitation', fromMs: 4 * HOUR_MS, toMs: 4 * HOUR_MS, why: 'outOfRange' },
      { column: 'precipitation', fromMs: 5 * HOUR_MS, toMs: 5 * HOUR_MS, why: 'columnShort' },
    ])
  })
})
