import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { quantity } from '../catalogue/quantity.ts'
import type { Result } from '../result.ts'
import { checked } from './checked.ts'
import {
  logitSun,
  RANGE_SHIFT_C,
  WIND_SHIFT,
  type Climate,
  type RainMonth,
  type StateCourse,
} from './climate.ts'
import { altitudeM, latitudeDeg } from './evapotranspiration-fields.ts'
import { harmonicsOf } from './fit-state.ts'
import { FIT_WET_MM } from './generate.ts'
import { shiftedChances, wetShareOf, type WetChances } from './rain-chain.ts'
import { dayLengthHours, extraterrestrialDayMJ, radiationFromSunshineMJ } from './radiation.ts'

const month = v.strictObject({
  rainMm: quantity({ meaning: 'Mean rain of the month', unit: 'mm', min: 0, max: 2000 }),
  wetDays: quantity({ meaning: 'Mean number of days with 1 mm or more', unit: 'd', min: 0.1, max: 30 }),
  minC: quantity({ meaning: 'Mean daily minimum', unit: 'degC', min: -50, max: 40 }),
  maxC: quantity({ meaning: 'Mean daily maximum', unit: 'degC', min: -45, max: 50 }),
  windMPerS: v.optional(quantity({ meaning: 'Mean wind at 10 m', unit: 'm/s', min: 0.1, max: 25 })),
  sunshineHours: v.optional(quantity({ meaning: 'Mean sunshine a day', unit: 'h', min: 0, max: 24 })),
  radiationMJPerM2: v.optional(
    quantity({ meaning: 'Mean global radiation a day', unit: 'MJ/m2', min: 0, max: 40 }),
  ),
})

/** Monthly normals as climate tables print them, January first. */
export const climateNormals = v.strictObject({
  latitudeDeg,
  longitudeDeg: quantity({ meaning: 'Longitude, east positive', unit: 'deg', min: -180, max: 180 }),
  altitudeM,
  months: v.pipe(v.array(month), v.length(12)),
})

/** Reads a table of normals as a person wrote it. */
export const readNormals = (json: unknown): Result<ClimateNormals, CalculationError> =>
  checked(climateNormals, json)

/** Monthly normals. */
export type ClimateNormals = v.InferOutput<typeof climateNormals>
type Month = ClimateNormals['months'][number]

/**
 * What normals do not say is taken from a fit to Dublin Airport, 1980-2025 (Met Éireann, CC BY 4.0; our own fit): how days hang together, how far they
 * stray from the mean, and how wet days differ from dry ones. Good for maritime places at middle latitudes; elsewhere our assumption.
 */
const LIKE_DUBLIN = {
  wetAfterDry: [0.39, 0.32, 0.21],
  wetAfterWet: 0.51,
  /** Light and heavy falls over their mean, in equal shares. */
  light: 0.45,
  heavy: 1.55,
  drizzleShare: 0.36,
  drizzleMm: 0.37,
  yearSpread: 0.18,
  amountSpread: 0.2,
  monthSpreadC: 0.6,
  /** Spread of a day about the course in January and July, and wet less dry, on the scales of `STATE_VARIABLES`. */
  meanC: { january: 3, july: 2, wetLess: 0 },
  logRange: { january: 0.42, july: 0.3, wetLess: -0.15 },
  logitSun: { january: 1.03, july: 0.8, wetLess: -0.75 },
  logWind: { january: 0.45, july: 0.38, wetLess: 0.23 },
  carry: [
    [0.67, 0.07, -0.06, -0.07],
    [-0.07, 0.27, 0.12, -0.02],
    [0, 0.11, 0.15, 0.06],
    [-0.01, 0.08, -0.04, 0.51],
  ],
  root: [
    [0.74, 0, 0, 0],
    [-0.13, 0.94, 0, 0],
    [-0.11, 0.45, 0.84, 0],
    [0.14, -0.13, 0.05, 0.85],
  ],
} as const

/** Wind where the table has none, m/s at 10 m (FAO-56 takes 2 m/s at 2 m). */
const UNKNOWN_WIND = 2.7

const MID_MONTH = Array.from({ length: 12 }, (_, m) => (m + 0.5) * 30.44)
const MONTH_DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** Shifts the chances of Dublin until the share of wet days is the one wanted (halving of the interval). */
const chancesFor = (wetShare: number): WetChances => {
  let [low, high] = [-6, 6]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (wetShareOf(shiftedChances(LIKE_DUBLIN, middle)) < wetShare) low = middle
    else high = middle
  }
  return shiftedChances(LIKE_DUBLIN, (low + high) / 2)
}

const rainOf = (normal: Month, days: number): RainMonth => {
  const { drizzleShare, drizzleMm, light, heavy } = LIKE_DUBLIN
  const wetRain = normal.rainMm - (days - normal.wetDays) * drizzleShare * drizzleMm
  const over = Math.max(0.2, wetRain / normal.wetDays - FIT_WET_MM)
  return {
    ...chancesFor(normal.wetDays / days),
    share: 0.5,
    lightMm: light * over,
    heavyMm: heavy * over,
    drizzleShare,
    drizzleMm,
    yearSpread: LIKE_DUBLIN.yearSpread,
    amountSpread: LIKE_DUBLIN.amountSpread,
  }
}

const solarShare = (normal: Month, dayOfYear: number, latitude: number): number => {
  const sky = extraterrestrialDayMJ(dayOfYear, latitude)
  if (normal.radiationMJPerM2 !== undefined) return normal.radiationMJPerM2 / Math.max(0.5, sky)
  return normal.sunshineHours === undefined
    ? Math.min(0.75, 0.16 * Math.sqrt(Math.max(0, normal.maxC - normal.minC)))
    : radiationFromSunshineMJ(normal.sunshineHours, dayLengthHours(dayOfYear, latitude), 1)
}

/** Means of the four variables in one month, all days together. The logarithms are brought down so that the mean of the figures themselves comes out. */
const meansOf = (
  normal: Month,
  dayOfYear: number,
  latitude: number,
): readonly [number, number, number, number] => [
  (normal.minC + normal.maxC) / 2,
  Math.log(Math.max(0.5, normal.maxC - normal.minC) + RANGE_SHIFT_C) - 0.36 ** 2 / 2,
  logitSun(solarShare(normal, dayOfYear, latitude)),
  Math.log((normal.windMPerS ?? UNKNOWN_WIND) + WIND_SHIFT) - 0.42 ** 2 / 2,
]

/** A climate from monthly normals. Each variable's monthly means become a yearly course; wet and dry days lie either side of it. */
export const climateOfNormals = (normals: ClimateNormals): Climate => {
  const rain = normals.months.map((normal, m) => rainOf(normal, MONTH_DAYS[m] ?? 30))
  const wetShare = normals.months.reduce((sum, { wetDays }) => sum + wetDays, 0) / 365.25
  const kinds = [LIKE_DUBLIN.meanC, LIKE_DUBLIN.logRange, LIKE_DUBLIN.logitSun, LIKE_DUBLIN.logWind]
  // South of the equator winter is in July.
  const season = normals.latitudeDeg < 0 ? -1 : 1
  const courses = kinds.map((kind, i) => {
    const mean = harmonicsOf(
      MID_MONTH,
      normals.months.map((normal, m) => meansOf(normal, MID_MONTH[m] ?? 1, normals.latitudeDeg)[i] ?? 0),
    )
    const spread = [
      (kind.january + kind.july) / 2,
      (season * (kind.january - kind.july)) / 2,
      0,
      0,
      0,
    ] as const
    const course = (shift: number): StateCourse => ({
      mean: [mean[0] + shift, mean[1], mean[2], mean[3], mean[4]],
      spread,
    })
    return { dry: course(-wetShare * kind.wetLess), wet: course((1 - wetShare) * kind.wetLess) }
  })
  return {
    station: {
      latitudeDeg: normals.latitudeDeg,
      longitudeDeg: normals.longitudeDeg,
      altitudeM: normals.altitudeM,
      windHeightM: 10,
    },
    wetMm: FIT_WET_MM,
    rain,
    variables: ['meanC', 'logRange', 'logitSun', 'logWind'],
    dry: courses.map(({ dry }) => dry),
    wet: courses.map(({ wet }) => wet),
    carry: LIKE_DUBLIN.carry,
    root: LIKE_DUBLIN.root,
    monthSpreadC: normals.months.map(() => LIKE_DUBLIN.monthSpreadC),
  }
}
