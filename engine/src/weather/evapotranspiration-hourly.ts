import * as v from 'valibot'
import type { Check } from '../catalogue/item.ts'
import { item } from '../catalogue/item.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { fail, ok } from '../result.ts'
import { calendarDate, dayOfYear, parseDate } from '../time/calendar.ts'
import { DEFAULT_WIND_2M, LEAST_WIND_2M } from './energy.ts'
import { vapourPressureOf, type EtAssumption } from './evapotranspiration.ts'
import {
  airC,
  altitudeM,
  latitudeDeg,
  moistureFields,
  moistureOf,
  windFields,
} from './evapotranspiration-fields.ts'
import { assumed } from './evapotranspiration-items.ts'
import { penmanHourMm, windAt2M } from './penman.ts'
import {
  clearSky,
  extraterrestrialHourMJ,
  hourAngleRad,
  netLongwaveHourMJ,
  netShortwave,
} from './radiation.ts'
import { saturationVapourPressureKPa } from './vapour.ts'

/** Solar over clear-sky radiation of a night for which none is given, as in FAO-56 example 19 (b). */
const NIGHT_CLEARNESS = 0.8

/** N'Diaye, Senegal: 16 13 N, 16 15 W, 8 m, clock one hour behind UTC. */
const NDIAYE = {
  date: '2023-10-01',
  latitudeDeg: 16 + 13 / 60,
  longitudeDeg: -16.25,
  altitudeM: 8,
  utcOffsetMinutes: -60,
}
const DAY = {
  ...NDIAYE,
  hour: 14,
  meanC: 38,
  meanHumidityPercent: 52,
  windMPerS: 3.3,
  radiationMJPerM2: 2.45,
}
const NIGHT = {
  ...NDIAYE,
  hour: 2,
  meanC: 28,
  meanHumidityPercent: 90,
  windMPerS: 1.9,
  radiationMJPerM2: 0,
  clearness: 0.8,
}

const row = (
  id: string,
  where: string,
  input: unknown,
  output: string,
  expected: number,
  tolerance: number,
): Check => ({
  id,
  class: 'published',
  source: 'fao56',
  where,
  input,
  output,
  expected,
  tolerance,
})

const CHECKS: readonly Check[] = [
  row('example-19a', 'example 19 (a): 14 to 15 h; 0.63 mm', DAY, 'etMm', 0.63, 0.006),
  row('example-19a-Ra', 'example 19 (a): Ra 3.543', DAY, 'extraterrestrialMJPerM2', 3.543, 0.002),
  row('example-19a-Rn', 'example 19 (a): Rn 1.749', DAY, 'netRadiationMJPerM2', 1.749, 0.002),
  row('example-19a-G', 'example 19 (a): G 0.175', DAY, 'soilHeatMJPerM2', 0.175, 0.001),
  row('example-19b', 'example 19 (b): 2 to 3 h; 0.00 mm', NIGHT, 'etMm', 0, 0.005),
  row('example-19b-Rn', 'example 19 (b): Rn -0.100', NIGHT, 'netRadiationMJPerM2', -0.1, 0.001),
  row('example-19b-G', 'example 19 (b): G -0.050', NIGHT, 'soilHeatMJPerM2', -0.05, 0.001),
]

/** `weather.referenceEvapotranspirationHourly`: FAO-56 Penman-Monteith for one hour. */
export const referenceEvapotranspirationHourlyItem = item({
  name: 'weather.referenceEvapotranspirationHourly',
  title: 'Water used by grass in an hour (reference evapotranspiration)',
  words:
    'The daily formula for one hour: the ground takes up a tenth of the net radiation by day and gives back half of the loss by night. Never below nought; what would be below is dew.',
  formula:
    'ET0 = [0.408 D (Rn - G) + g 37/(T + 273) u2 (e - ea)] / [D + g (1 + 0.34 u2)]; G = 0.1 Rn by day, 0.5 Rn by night',
  evidence: 'handbook',
  sources: ['fao56'],
  notes: [
    'By night, and in the hours about sunset, the long-wave loss needs the clearness of the afternoon; without it 0.8 is taken, as in example 19.',
  ],
  inputs: v.object({
    date: calendarDate('Calendar day on the local clock'),
    hour: quantity({ meaning: 'Start of the hour on the local clock', unit: 'h', min: 0, max: 23.99 }),
    utcOffsetMinutes: quantity({ meaning: 'Local time less UTC', unit: 'min', min: -840, max: 840 }),
    latitudeDeg,
    longitudeDeg: quantity({ meaning: 'Longitude, east positive', unit: 'deg', min: -180, max: 180 }),
    altitudeM,
    meanC: airC('Mean air temperature of the hour', 'T'),
    ...moistureFields,
    ...windFields,
    radiationMJPerM2: quantity({
      meaning: 'Global radiation of the hour',
      unit: 'MJ/m2',
      symbol: 'Rs',
      min: 0,
      max: 5.5,
    }),
    clearness: v.optional(
      quantity({
        meaning: 'Solar over clear-sky radiation to reckon long-wave loss with',
        unit: '1',
        symbol: 'Rs/Rso',
        min: 0.2,
        max: 1,
      }),
    ),
  }),
  outputs: v.object({
    etMm: figure({ meaning: 'Reference evapotranspiration', unit: 'mm', symbol: 'ET0' }),
    extraterrestrialMJPerM2: figure({
      meaning: 'Radiation above the atmosphere',
      unit: 'MJ/m2',
      symbol: 'Ra',
    }),
    netRadiationMJPerM2: figure({ meaning: 'Net radiation', unit: 'MJ/m2', symbol: 'Rn' }),
    soilHeatMJPerM2: figure({ meaning: 'Heat into the ground', unit: 'MJ/m2', symbol: 'G' }),
    assumed,
  }),
  checks: CHECKS,
  run: (input) => {
    const day = parseDate('date', input.date)
    if (!day.ok) return day
    const moisture = moistureOf(input)
    if (!moisture.ok) return moisture
    if (moisture.value === undefined)
      return fail({
        type: 'missing',
        field: 'meanHumidityPercent',
        unit: '%',
        expected: 'one of vapourPressureKPa, dewPointC or meanHumidityPercent',
      })
    const j = dayOfYear(input.date)
    const angle = hourAngleRad(j, input.hour + 0.5 - input.utcOffsetMinutes / 60, input.longitudeDeg)
    const sky = extraterrestrialHourMJ(j, input.latitudeDeg, angle)
    const clear = clearSky(sky, input.altitudeM)
    const clearness = input.clearness ?? (clear > 0 ? input.radiationMJPerM2 / clear : NIGHT_CLEARNESS)
    const saturationKPa = saturationVapourPressureKPa(input.meanC)
    const given = vapourPressureOf(input.meanC, input.meanC, moisture.value)
    const vapourPressureKPa = Math.min(saturationKPa, given)
    const net =
      netShortwave(input.radiationMJPerM2) - netLongwaveHourMJ(input.meanC, vapourPressureKPa, clearness)
    const soilHeat = net * (sky > 0 ? 0.1 : 0.5)
    const measured =
      input.windMPerS === undefined ? DEFAULT_WIND_2M : windAt2M(input.windMPerS, input.windHeightM)
    const et = penmanHourMm({
      meanC: input.meanC,
      saturationKPa,
      vapourPressureKPa,
      wind2MPerS: Math.max(LEAST_WIND_2M, measured),
      netRadiationMJ: net,
      soilHeatMJ: soilHeat,
      altitudeM: input.altitudeM,
    })
    const taken: (EtAssumption | false)[] = [
      given > saturationKPa && 'humidityHeldAtSaturation',
      input.windMPerS === undefined && 'windTwoMetresPerSecond',
      measured < LEAST_WIND_2M && 'windHeldAtHalfMetrePerSecond',
      clear <= 0 && input.clearness === undefined && 'clearnessUnknown',
    ]
    return ok({
      etMm: Math.max(0, et),
      extraterrestrialMJPerM2: sky,
      netRadiationMJPerM2: net,
      soilHeatMJPerM2: soilHeat,
      assumed: taken.filter((one) => one !== false),
    })
  },
})
