import { isRecord } from '../is-record.ts'
import { fail, ok, type Result } from '../result.ts'
import { columnsOf, type ColumnError, type Gap, type Labelled } from './forecast-columns.ts'
import { gridOf, instantsOf, type Grid, type TimeError } from './forecast-times.ts'
import { type VariableName } from './forecast-units.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'
import { dewPointFromHumidityC } from './vapour.ts'

/** Why an answer of a weather API cannot be used at all. Everything less is kept and listed as a gap. */
export type ForecastError =
  | { readonly type: 'notJson'; readonly reason: string; readonly length: number }
  | { readonly type: 'refused'; readonly reason: string }
  | {
      readonly type: 'wrongShape'
      readonly field: string
      readonly expected: string
      readonly received: string
    }
  | { readonly type: 'noColumns'; readonly accepted: readonly VariableName[] }
  | TimeError
  | ColumnError

/** A forecast or archive as read, with all that was not as it should be. */
export type Forecast = {
  readonly weather: WeatherHours
  /** Variables of the API that were found, by its own names. */
  readonly columns: readonly VariableName[]
  /** Columns whose unit the answer did not name, so that the documented one was taken. */
  readonly assumedUnits: readonly string[]
  /** What is missing, by column and stretch of labels. */
  readonly gaps: readonly Gap[]
  /** Labels that came twice, epoch ms; the first was kept. */
  readonly repeatedMs: readonly number[]
  /** Whether the rows came out of order; they were put in order. */
  readonly wasUnsorted: boolean
  /** Place of the grid cell, where the answer gives it. */
  readonly latitudeDeg: number | null
  readonly longitudeDeg: number | null
  readonly altitudeM: number | null
}

const kindOf = (value: unknown): string =>
  value === null ? 'null' : Array.isArray(value) ? `a list of ${value.length}` : typeof value

const numberOrNull = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null

type Body = { readonly root: Readonly<Record<string, unknown>>; readonly hourly: Labelled }

const wrong = (field: string, expected: string, value: unknown) =>
  fail({ type: 'wrongShape' as const, field, expected, received: kindOf(value) })

const bodyOf = (json: unknown): Result<Body, ForecastError> => {
  if (!isRecord(json)) return wrong('', 'an object for one place', json)
  if (json['error'] === true)
    return fail({
      type: 'refused',
      reason: typeof json['reason'] === 'string' ? json['reason'] : 'no reason given',
    })
  const { hourly, hourly_units: units } = json
  if (!isRecord(hourly)) return wrong('hourly', 'an object of columns', hourly)
  if (units !== undefined && !isRecord(units)) return wrong('hourly_units', 'an object of units', units)
  const { time } = hourly
  if (!Array.isArray(time) || time.length === 0)
    return wrong('hourly.time', 'a list of at least one time', time)
  return ok({ root: json, hourly: { columns: hourly, units: units ?? {}, time } })
}

const gridOfBody = ({ root, hourly }: Body): Result<Grid, ForecastError> => {
  const { timezone, utc_offset_seconds: offset } = root
  if (timezone !== undefined && typeof timezone !== 'string')
    return wrong('timezone', 'the name of a zone', timezone)
  if (offset !== undefined && (typeof offset !== 'number' || !(Math.abs(offset) <= 50_400)))
    return wrong('utc_offset_seconds', 'seconds from -50400 to 50400', offset)
  const instants = instantsOf(hourly.time, { timeZone: timezone, utcOffsetSeconds: offset })
  return instants.ok ? gridOf(instants.value, hourly.time) : instants
}

/** Mean of both ends of each hour; where only one end is known, that one. `labels` are columns of length `members * labels`. */
const meanOfEnds = (at: Float64Array, members: number): Float64Array => {
  const labels = at.length / members
  return at.map((end, i) => {
    const start = i % labels === 0 ? NaN : (at[i - 1] ?? NaN)
    if (Number.isNaN(start)) return end
    return Number.isNaN(end) ? start : (start + end) / 2
  })
}

/** Adds columns hour by hour; a missing part makes the sum missing. */
const sumOf = (first: Float64Array, second: Float64Array | undefined): Float64Array =>
  second === undefined ? first : first.map((value, i) => value + (second[i] ?? NaN))

/**
 * Reads one place of the open hourly JSON shape (`hourly.time`, `hourly.<variable>`, `hourly_units`) as hours of weather.
 * Hour `h` of the result ends at the h-th label: sums and gusts of the API look back, so the value labelled 15:00 is the rain of 14:00 to 15:00;
 * temperatures, dew point and wind stand at the label, so an hour takes the mean of its two ends. Ensembles (`precipitation_member01`) become
 * members, the plain column first. Missing values are NaN and listed. Units are turned into ours.
 */
export const readForecast = (json: unknown): Result<Forecast, ForecastError> => {
  const body = bodyOf(json)
  if (!body.ok) return body
  const grid = gridOfBody(body.value)
  if (!grid.ok) return grid
  const read = columnsOf(body.value.hourly, grid.value)
  if (!read.ok) return read
  const { byName, members, gaps, assumedUnits, columns } = read.value
  const labels = grid.value.labels
  const missing = (): Float64Array => new Float64Array(members * labels).fill(NaN)
  const column = (name: VariableName): Float64Array => byName.get(name) ?? missing()
  const temperature = column('temperature_2m')
  const humidity = byName.get('relative_humidity_2m')
  const dewPoint =
    byName.get('dew_point_2m') ??
    humidity?.map((percent, i) => dewPointFromHumidityC(temperature[i] ?? NaN, percent)) ??
    missing()
  const weather: WeatherHours = {
    startMs: grid.value.firstMs - HOUR_MS,
    hours: labels,
    members,
    rainMm: byName.get('precipitation') ?? sumOf(column('rain'), byName.get('showers')),
    temperatureC: meanOfEnds(temperature, members),
    dewPointC: meanOfEnds(dewPoint, members),
    windMPerS: meanOfEnds(column('wind_speed_10m'), members),
    gustMPerS: column('wind_gusts_10m'),
    radiationWPerM2: column('shortwave_radiation'),
  }
  return ok({
    weather,
    columns,
    assumedUnits,
    gaps,
    repeatedMs: grid.value.repeatedMs,
    wasUnsorted: grid.value.wasUnsorted,
    latitudeDeg: numberOrNull(body.value.root['latitude']),
    longitudeDeg: numberOrNull(body.value.root['longitude']),
    altitudeM: numberOrNull(body.value.root['elevation']),
  })
}

/** As `readForecast`, from the text of the answer; half an answer is `notJson`. */
export const readForecastText = (text: string): Result<Forecast, ForecastError> => {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch (error) {
    return fail({ type: 'notJson', reason: String(error), length: text.length })
  }
  return readForecast(json)
}
