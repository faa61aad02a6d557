import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { quantity } from '../catalogue/quantity.ts'
import { fail, ok, type Result } from '../result.ts'
import type { Moisture } from './evapotranspiration.ts'

export const latitudeDeg = quantity({
  meaning: 'Latitude, north positive',
  unit: 'deg',
  symbol: 'phi',
  min: -90,
  max: 90,
})
export const altitudeM = quantity({
  meaning: 'Height above sea',
  unit: 'm',
  symbol: 'z',
  min: -430,
  max: 6000,
})
export const airC = (meaning: string, symbol: string) =>
  quantity({ meaning, unit: 'degC', symbol, min: -60, max: 60 })
export const humidityPercent = (meaning: string, symbol: string) =>
  v.optional(quantity({ meaning, unit: '%', symbol, min: 1, max: 100 }))

/** Moisture of the air: at most one of the four ways. */
export const moistureFields = {
  vapourPressureKPa: v.optional(
    quantity({ meaning: 'Actual vapour pressure', unit: 'kPa', symbol: 'ea', min: 0.001, max: 12 }),
  ),
  dewPointC: v.optional(airC('Dew point', 'Tdew')),
  meanHumidityPercent: humidityPercent('Mean relative humidity', 'RHmean'),
}

/** Wind: speed and the height of the gauge. */
export const windFields = {
  windMPerS: v.optional(quantity({ meaning: 'Mean wind', unit: 'm/s', symbol: 'uz', min: 0, max: 60 })),
  windHeightM: v.optional(
    quantity({
      meaning: 'Height of the wind gauge over short grass',
      unit: 'm',
      symbol: 'z',
      min: 0.5,
      max: 100,
    }),
    2,
  ),
}

type GivenMoisture = {
  readonly vapourPressureKPa?: number | undefined
  readonly dewPointC?: number | undefined
  readonly meanHumidityPercent?: number | undefined
  readonly minHumidityPercent?: number | undefined
  readonly maxHumidityPercent?: number | undefined
}

const bad = (field: string, unit: string, reason: string) =>
  fail({ type: 'notDefined' as const, field, unit, reason })

/** The one measure of moisture that was given; none is none, two are an error. */
export const moistureOf = (given: GivenMoisture): Result<Moisture | undefined, CalculationError> => {
  const { vapourPressureKPa, dewPointC, meanHumidityPercent, minHumidityPercent, maxHumidityPercent } = given
  const ways: Moisture[] = []
  if (vapourPressureKPa !== undefined) ways.push({ vapourPressureKPa })
  if (dewPointC !== undefined) ways.push({ dewPointC })
  if (meanHumidityPercent !== undefined) ways.push({ meanHumidityPercent })
  if (maxHumidityPercent !== undefined)
    ways.push(
      minHumidityPercent === undefined ? { maxHumidityPercent } : { minHumidityPercent, maxHumidityPercent },
    )
  else if (minHumidityPercent !== undefined)
    return bad('maxHumidityPercent', '%', 'minHumidityPercent is given without maxHumidityPercent')
  if (ways.length > 1)
    return bad(
      Object.keys(ways[1] ?? {})[0] ?? '',
      '1',
      `the air's moisture is given ${ways.length} times (${ways.flatMap((way) => Object.keys(way)).join(', ')}); give it once`,
    )
  if (
    minHumidityPercent !== undefined &&
    maxHumidityPercent !== undefined &&
    minHumidityPercent > maxHumidityPercent
  )
    return bad(
      'minHumidityPercent',
      '%',
      `minHumidityPercent is ${minHumidityPercent} % but maxHumidityPercent is ${maxHumidityPercent} %`,
    )
  return ok(ways[0])
}

/** Says that the day's minimum is over its maximum, or nothing. */
export const extremesError = (minC: number, maxC: number): CalculationError | undefined =>
  minC > maxC
    ? {
        type: 'notDefined',
        field: 'minC',
        unit: 'degC',
        reason: `minC is ${minC} degC but maxC is ${maxC} degC`,
      }
    : undefined
