import { fail, ok, type Result } from '../result.ts'
import { instantOf, isoWithOffset } from '../time/zone.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'

/** What a person says of the day ahead: 'rain expected at 15:00', for so long, so hard. Clock times of the course, minutes after midnight. */
export type SaidRain = {
  readonly date: string
  readonly fromMin: number
  /** Default: to the end of that day. */
  readonly untilMin?: number
  /** Rain in each hour of it, mm. Default 1. */
  readonly mmPerHour?: number
}

/** Why what was said cannot be put into the hours. */
export type SaidError =
  | {
      readonly type: 'endsBeforeStart'
      readonly field: 'untilMin'
      readonly fromMin: number
      readonly untilMin: number
    }
  | {
      readonly type: 'outOfRange'
      readonly field: 'fromMin' | 'untilMin' | 'mmPerHour'
      readonly unit: string
      readonly min: number
      readonly max: number
      readonly received: number
    }
  | { readonly type: 'outsideHours'; readonly field: 'date'; readonly from: string; readonly to: string }

/** Rain in an hour when only 'rain' was said: steady rain, mm (common practice, no source). */
const PLAIN_RAIN_MM = 1

const rangeError = (said: Required<SaidRain>): SaidError | undefined => {
  const check = (
    field: 'fromMin' | 'untilMin' | 'mmPerHour',
    unit: string,
    min: number,
    max: number,
  ): SaidError | undefined =>
    said[field] >= min && said[field] <= max
      ? undefined
      : { type: 'outOfRange', field, unit, min, max, received: said[field] }
  return (
    check('fromMin', 'min', 0, 1439) ??
    check('untilMin', 'min', 1, 1440) ??
    check('mmPerHour', 'mm/h', 0, 100)
  )
}

/** Hours without any figure, to say something about where there is no forecast at all. */
export const unknownHours = (startMs: number, hours: number): WeatherHours => {
  const none = (): Float64Array => new Float64Array(hours).fill(NaN)
  return {
    startMs,
    hours,
    members: 1,
    rainMm: none(),
    temperatureC: none(),
    dewPointC: none(),
    windMPerS: none(),
    gustMPerS: none(),
    radiationWPerM2: none(),
  }
}

/**
 * Puts rain that a person expects into the hours, in every member: hours wholly or partly inside get `mmPerHour`, the hours of that day before it become dry.
 * What was said stands over what the forecast says; other days and columns stay as they are. 0 mm says that it will stay dry.
 */
export const withSaidRain = (
  weather: WeatherHours,
  said: SaidRain,
  timeZone: string,
): Result<WeatherHours, SaidError> => {
  const whole = { untilMin: 1440, mmPerHour: PLAIN_RAIN_MM, ...said }
  const wrong = rangeError(whole)
  if (wrong !== undefined) return fail(wrong)
  const { date, fromMin, untilMin, mmPerHour } = whole
  if (untilMin <= fromMin) return fail({ type: 'endsBeforeStart', field: 'untilMin', fromMin, untilMin })
  const hourOf = (minute: number): number => (instantOf(date, minute, timeZone) - weather.startMs) / HOUR_MS
  const [dayStart, from, until] = [hourOf(0), hourOf(fromMin), hourOf(untilMin)]
  if (until <= 0 || from >= weather.hours)
    return fail({
      type: 'outsideHours',
      field: 'date',
      from: isoWithOffset(weather.startMs, timeZone),
      to: isoWithOffset(weather.startMs + weather.hours * HOUR_MS, timeZone),
    })
  const rainMm = weather.rainMm.map((mm, k) => {
    const h = k % weather.hours
    if (h + 1 > from && h < until) return mmPerHour
    return h >= dayStart && h < from ? 0 : mm
  })
  return ok({ ...weather, rainMm })
}
