import type { Check } from '../catalogue/item.ts'

/** Degrees and minutes as degrees. */
const dm = (degrees: number, minutes: number): number => degrees + minutes / 60

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

/** Bangkok in April (mid month): 13 44 N, 2 m. */
const BANGKOK = {
  date: '2023-04-15',
  latitudeDeg: dm(13, 44),
  altitudeM: 2,
  minC: 25.6,
  maxC: 34.8,
  vapourPressureKPa: 2.85,
  windMPerS: 2,
  sunshineHours: 8.5,
  soilHeatFluxMJPerM2: 0.14,
}
/** Uccle on 6 July: wind 10 km/h at 10 m. */
const UCCLE = {
  date: '2023-07-06',
  latitudeDeg: 50.8,
  altitudeM: 100,
  minC: 12.3,
  maxC: 21.5,
  minHumidityPercent: 63,
  maxHumidityPercent: 84,
  windMPerS: 10 / 3.6,
  windHeightM: 10,
  sunshineHours: 9.25,
}
/** Lyon in July, temperatures alone. */
const LYON = { date: '2023-07-15', latitudeDeg: 45.72, altitudeM: 200, minC: 14.8, maxC: 26.6 }

/** Daily Penman-Monteith: FAO-56 examples 17, 18 and 20, each with what is printed on the way. */
export const DAILY_CHECKS: readonly Check[] = [
  row(
    'example-17',
    'example 17: Bangkok, April, monthly means with soil heat flux; 5.72 mm/day',
    BANGKOK,
    'etMm',
    5.72,
    0.006,
  ),
  row('example-17-Ra', 'example 17: Ra 38.06', BANGKOK, 'extraterrestrialMJPerM2', 38.06, 0.02),
  row('example-17-Rn', 'example 17: Rn 14.33', BANGKOK, 'netRadiationMJPerM2', 14.33, 0.01),
  row('example-18', 'example 18: Uccle, 6 July; 3.88 mm/day (printed as 3.9)', UCCLE, 'etMm', 3.88, 0.006),
  row('example-18-Ra', 'example 18: Ra 41.09', UCCLE, 'extraterrestrialMJPerM2', 41.09, 0.01),
  row('example-18-Rn', 'example 18: Rn 13.28', UCCLE, 'netRadiationMJPerM2', 13.28, 0.01),
  row(
    'example-20',
    'example 20: Lyon, July, temperatures alone; 4.56 mm/day (printed as 4.6)',
    LYON,
    'etMm',
    4.56,
    0.006,
  ),
  row('example-20-Rn', 'example 20: Rn 13.48', LYON, 'netRadiationMJPerM2', 13.48, 0.01),
  row(
    'example-20-wind-1',
    'example 20: the same at 1 m/s, 4.2 mm/day',
    { ...LYON, windMPerS: 1 },
    'etMm',
    4.2,
    0.05,
  ),
  row(
    'example-20-wind-3',
    'example 20: the same at 3 m/s, 4.8 mm/day',
    { ...LYON, windMPerS: 3 },
    'etMm',
    4.8,
    0.05,
  ),
  row(
    'example-12',
    'examples 10 to 12: Rio de Janeiro, 15 May; Rn 7.6',
    {
      date: '2023-05-15',
      latitudeDeg: -dm(22, 54),
      altitudeM: 0,
      minC: 19.1,
      maxC: 25.1,
      vapourPressureKPa: 2.1,
      sunshineHours: 220 / 31,
    },
    'netRadiationMJPerM2',
    7.6,
    0.05,
  ),
  row(
    'example-16',
    'example 16: Bangkok, April, radiation from temperatures with kRs 0.19; Rn 13.9',
    {
      date: '2023-04-15',
      latitudeDeg: dm(13, 44),
      altitudeM: 2,
      minC: 25.6,
      maxC: 34.8,
      vapourPressureKPa: 2.85,
      radiationCoefficient: 0.19,
    },
    'netRadiationMJPerM2',
    13.9,
    0.05,
  ),
]

/** Hargreaves: FAO-56 example 20. */
export const HARGREAVES_CHECKS: readonly Check[] = [
  row(
    'example-20',
    'example 20: Lyon, July; 5.0 mm/day',
    {
      date: LYON.date,
      latitudeDeg: LYON.latitudeDeg,
      minC: LYON.minC,
      maxC: LYON.maxC,
    },
    'etMm',
    5,
    0.05,
  ),
]

/** Ra and N: FAO-56 examples 8, 9, 10, 15, 17 and 18. */
export const SKY_CHECKS: readonly Check[] = [
  row(
    'example-8',
    'example 8: 20 S, 3 September; Ra 32.2',
    { date: '2023-09-03', latitudeDeg: -20 },
    'radiationMJPerM2',
    32.2,
    0.05,
  ),
  row(
    'example-9',
    'example 9: 20 S, 3 September; N 11.7',
    { date: '2023-09-03', latitudeDeg: -20 },
    'dayLengthHours',
    11.7,
    0.05,
  ),
  row(
    'example-10-Ra',
    'example 10: 22 54 S, 15 May; Ra 25.1',
    { date: '2023-05-15', latitudeDeg: -dm(22, 54) },
    'radiationMJPerM2',
    25.1,
    0.05,
  ),
  row(
    'example-10-N',
    'example 10: N 10.9',
    { date: '2023-05-15', latitudeDeg: -dm(22, 54) },
    'dayLengthHours',
    10.9,
    0.05,
  ),
  row(
    'example-15',
    'example 15: 45 43 N, 15 July; Ra 40.6',
    { date: '2023-07-15', latitudeDeg: dm(45, 43) },
    'radiationMJPerM2',
    40.6,
    0.05,
  ),
  row(
    'example-17-N',
    'example 17: 13 44 N, 15 April; N 12.31',
    { date: '2023-04-15', latitudeDeg: dm(13, 44) },
    'dayLengthHours',
    12.31,
    0.01,
  ),
  row(
    'example-18-N',
    'example 18: 50.80 N, 6 July; N 16.1',
    { date: '2023-07-06', latitudeDeg: 50.8 },
    'dayLengthHours',
    16.1,
    0.05,
  ),
]
