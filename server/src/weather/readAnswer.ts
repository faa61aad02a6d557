import { isRecord } from '@swardwright/engine'
import { fail, ok, readForecast, type Result } from '@swardwright/engine'
import type { WeatherAnswer, WeatherProblem } from '@swardwright/journal'
import { forecastErrorWords } from '@swardwright/present'
import { HOURLY } from './provider.ts'

/** The JSON of an answer, or what came instead. */
export const jsonOf = (text: string): Result<unknown, WeatherProblem> => {
  const start = text.trimStart().slice(0, 1)
  if (start === '') return fail({ type: 'notJson', what: 'empty' })
  try {
    return ok(JSON.parse(text))
  } catch {
    return fail({ type: 'notJson', what: start === '{' || start === '[' ? 'half' : 'page' })
  }
}

/** The first column that is there in another unit than was asked for. A member of an ensemble may leave its unit to the plain column. */
const otherUnit = (json: unknown): WeatherProblem | null => {
  if (!isRecord(json) || !isRecord(json['hourly'])) return null
  const units = isRecord(json['hourly_units']) ? json['hourly_units'] : {}
  for (const column of Object.keys(json['hourly'])) {
    const name = column.replace(/_member\d+(_\w+)?$/u, '')
    const asked = Object.entries(HOURLY).find(([variable]) => variable === name)?.[1]
    if (asked === undefined) continue
    const received = units[column] ?? units[name]
    if (received !== asked)
      return {
        type: 'otherUnit',
        field: `hourly_units.${column}`,
        asked,
        received: typeof received === 'string' ? received : null,
      }
  }
  return null
}

/** An answer's text as a forecast that the engine can read, in the units asked for; gaps in it are kept as they are. */
export const readHourly = (text: string): Result<NonNullable<WeatherAnswer['forecast']>, WeatherProblem> => {
  const json = jsonOf(text)
  if (!json.ok) return json
  const unit = otherUnit(json.value)
  if (unit !== null) return fail(unit)
  const read = readForecast(json.value)
  if (!read.ok) return fail({ type: 'unreadable', reason: forecastErrorWords(read.error) })
  // The engine has just read it, so it has hours with labels.
  return ok(json.value as NonNullable<WeatherAnswer['forecast']>)
}
