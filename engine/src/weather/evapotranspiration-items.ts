import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { item } from '../catalogue/item.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { fail, ok } from '../result.ts'
import { calendarDate, dayOfYear, parseDate } from '../time/calendar.ts'
import { DAILY_CHECKS, HARGREAVES_CHECKS, SKY_CHECKS } from './evapotranspiration-checks.ts'
import { ET_ASSUMPTIONS, referenceEvapotranspiration } from './evapotranspiration.ts'
import {
  airC,
  altitudeM,
  extremesError,
  humidityPercent,
  latitudeDeg,
  moistureFields,
  moistureOf,
  windFields,
} from './evapotranspiration-fields.ts'
import { hargreavesMm } from './penman.ts'
import { dayLengthHours, extraterrestrialDayMJ } from './radiation.ts'

const extraterrestrialMJPerM2 = figure({
  meaning: 'Radiation above the atmosphere',
  unit: 'MJ/m2',
  symbol: 'Ra',
})
const netRadiationMJPerM2 = figure({
  meaning: 'Net radiation of the reference crop',
  unit: 'MJ/m2',
  symbol: 'Rn',
})
export const assumed = v.pipe(
  v.array(v.picklist(ET_ASSUMPTIONS)),
  v.description('Each fall-back that was taken because a measurement was missing'),
)

/** A day cannot get more sun than there is, and hardly more sunshine than daylight (the FAO day is up to half an hour short). */
const sunError = (
  sun: { readonly radiationMJPerM2?: number | undefined; readonly sunshineHours?: number | undefined },
  skyMJ: number,
  daylightHours: number,
): CalculationError | undefined => {
  const { radiationMJPerM2, sunshineHours } = sun
  const wrong = (field: string, unit: string, reason: string): CalculationError => ({
    type: 'notDefined',
    field,
    unit,
    reason,
  })
  if (radiationMJPerM2 !== undefined && sunshineHours !== undefined)
    return wrong(
      'sunshineHours',
      'h',
      'the sun is given twice (radiationMJPerM2, sunshineHours); give it once',
    )
  if (radiationMJPerM2 !== undefined && radiationMJPerM2 > skyMJ)
    return wrong(
      'radiationMJPerM2',
      'MJ/m2',
      `radiationMJPerM2 is ${radiationMJPerM2} but above the atmosphere there are only ${skyMJ.toFixed(1)} MJ/m2 that day; 1 J/cm2 is 0.01 MJ/m2`,
    )
  if (sunshineHours !== undefined && sunshineHours > daylightHours + 1)
    return wrong(
      'sunshineHours',
      'h',
      `sunshineHours is ${sunshineHours} but the day is ${daylightHours.toFixed(1)} h long`,
    )
  return undefined
}

/** `weather.referenceEvapotranspiration`: FAO-56 Penman-Monteith for a day. */
export const referenceEvapotranspirationItem = item({
  name: 'weather.referenceEvapotranspiration',
  title: 'Water used by grass in a day (reference evapotranspiration)',
  words:
    'What a well-watered cover of short grass gives to the air in a day: the sun it keeps, less what it radiates back, plus what dry moving air draws from it. Where a measurement is missing, the fall-back of the paper is taken and named.',
  formula: 'ET0 = [0.408 D (Rn - G) + g 900/(T + 273) u2 (es - ea)] / [D + g (1 + 0.34 u2)]',
  evidence: 'handbook',
  sources: ['fao56'],
  notes: [
    "Without humidity the dew point is taken to be the day's minimum, which a dry place seldom reaches; without wind 2 m/s; without sun the range of temperature stands for it.",
    'From temperatures alone the figure is only good as a sum over a week or more (FAO-56 chapter 4).',
    "Against the station's own series at Dublin Airport, 1980-2025, it is 0.26 mm a day high: see the weather page.",
  ],
  inputs: v.object({
    date: calendarDate('Calendar day'),
    latitudeDeg,
    altitudeM,
    minC: airC('Lowest air temperature of the day', 'Tmin'),
    maxC: airC('Highest air temperature of the day', 'Tmax'),
    meanC: v.optional(airC('Mean air temperature; half way between the extremes if not given', 'T')),
    ...moistureFields,
    minHumidityPercent: humidityPercent('Lowest relative humidity', 'RHmin'),
    maxHumidityPercent: humidityPercent('Highest relative humidity', 'RHmax'),
    ...windFields,
    radiationMJPerM2: v.optional(
      quantity({ meaning: 'Global radiation of the day', unit: 'MJ/m2', symbol: 'Rs', min: 0, max: 50 }),
    ),
    sunshineHours: v.optional(
      quantity({ meaning: 'Bright sunshine', unit: 'h', symbol: 'n', min: 0, max: 24 }),
    ),
    soilHeatFluxMJPerM2: v.optional(
      quantity({ meaning: 'Heat into the ground', unit: 'MJ/m2', symbol: 'G', min: -10, max: 10 }),
    ),
    radiationCoefficient: v.optional(
      quantity({
        meaning: 'kRs: 0.16 inland, 0.19 by the coast',
        unit: '1',
        symbol: 'kRs',
        min: 0.1,
        max: 0.25,
      }),
    ),
  }),
  outputs: v.object({
    etMm: figure({ meaning: 'Reference evapotranspiration', unit: 'mm', symbol: 'ET0' }),
    extraterrestrialMJPerM2,
    netRadiationMJPerM2,
    assumed,
  }),
  checks: DAILY_CHECKS,
  run: (input) => {
    const day = parseDate('date', input.date)
    if (!day.ok) return day
    const extremes = extremesError(input.minC, input.maxC)
    if (extremes !== undefined) return fail(extremes)
    const moisture = moistureOf(input)
    if (!moisture.ok) return moisture
    const j = dayOfYear(input.date)
    const sunWrong = sunError(
      input,
      extraterrestrialDayMJ(j, input.latitudeDeg),
      dayLengthHours(j, input.latitudeDeg),
    )
    if (sunWrong !== undefined) return fail(sunWrong)
    const { radiationMJPerM2, sunshineHours } = input
    const answer = referenceEvapotranspiration({
      ...input,
      dayOfYear: j,
      moisture: moisture.value,
      sun:
        radiationMJPerM2 !== undefined
          ? { radiationMJPerM2 }
          : sunshineHours === undefined
            ? undefined
            : { sunshineHours },
      soilHeatMJPerM2: input.soilHeatFluxMJPerM2,
    })
    return ok({
      etMm: answer.etMm,
      extraterrestrialMJPerM2: answer.extraterrestrialMJPerM2,
      netRadiationMJPerM2: answer.netRadiationMJPerM2,
      assumed: [...answer.assumed],
    })
  },
})

/** `weather.hargreaves`: evapotranspiration from temperatures alone. */
export const hargreavesItem = item({
  name: 'weather.hargreaves',
  title: 'Water used by grass, from temperatures alone (Hargreaves)',
  words:
    "The wider the gap between the day's highest and lowest temperature, the clearer the sky must have been; with the mean and the season that gives a rough figure.",
  formula: 'ET0 = 0.0023 (T + 17.8) (Tmax - Tmin)^0.5 Ra, Ra in mm',
  evidence: 'handbook',
  sources: ['fao56'],
  notes: [
    'Too high in humid places and too low in wind over 3 m/s (FAO-56 chapter 4). At Dublin Airport it is 27 % high in July and 38 % low in December.',
  ],
  inputs: v.object({
    date: calendarDate('Calendar day'),
    latitudeDeg,
    minC: airC('Lowest air temperature of the day', 'Tmin'),
    maxC: airC('Highest air temperature of the day', 'Tmax'),
    meanC: v.optional(airC('Mean air temperature; half way between the extremes if not given', 'T')),
  }),
  outputs: v.object({
    etMm: figure({ meaning: 'Reference evapotranspiration', unit: 'mm', symbol: 'ET0' }),
    extraterrestrialMJPerM2,
  }),
  checks: HARGREAVES_CHECKS,
  run: ({ date, latitudeDeg, minC, maxC, meanC }) => {
    const day = parseDate('date', date)
    if (!day.ok) return day
    const extremes = extremesError(minC, maxC)
    if (extremes !== undefined) return fail(extremes)
    const sky = extraterrestrialDayMJ(dayOfYear(date), latitudeDeg)
    return ok({
      etMm: hargreavesMm(minC, maxC, meanC ?? (minC + maxC) / 2, sky),
      extraterrestrialMJPerM2: sky,
    })
  },
})

/** `weather.extraterrestrialRadiation`: the sun above the clouds. */
export const extraterrestrialRadiationItem = item({
  name: 'weather.extraterrestrialRadiation',
  title: 'Sun above the atmosphere, and length of day',
  words:
    'How much radiation a flat square metre would get without air, from the season and the latitude alone, and how long the sun is up.',
  formula: 'Ra = (24 60/pi) 0.0820 dr [ws sin(phi) sin(d) + cos(phi) cos(d) sin(ws)]; N = 24 ws / pi',
  evidence: 'handbook',
  sources: ['fao56'],
  notes: [
    'The length of day leaves out refraction and the size of the sun: 0.25 to 0.4 h less than sunrise to sunset at 53 N. For daylight use daylight.sun.',
  ],
  inputs: v.object({ date: calendarDate('Calendar day'), latitudeDeg }),
  outputs: v.object({
    radiationMJPerM2: figure({ meaning: 'Radiation above the atmosphere', unit: 'MJ/m2', symbol: 'Ra' }),
    dayLengthHours: figure({ meaning: 'Length of day', unit: 'h', symbol: 'N' }),
  }),
  checks: SKY_CHECKS,
  run: ({ date, latitudeDeg }) => {
    const day = parseDate('date', date)
    if (!day.ok) return day
    const j = dayOfYear(date)
    return ok({
      radiationMJPerM2: extraterrestrialDayMJ(j, latitudeDeg),
      dayLengthHours: dayLengthHours(j, latitudeDeg),
    })
  },
})
