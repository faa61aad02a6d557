/** What a daily record can hold, with unit and the range outside which a figure is taken for a fault. */
export const DAILY_COLUMNS = {
  rainMm: { unit: 'mm', min: 0, max: 2000 },
  minC: { unit: 'degC', min: -75, max: 45 },
  maxC: { unit: 'degC', min: -65, max: 60 },
  meanC: { unit: 'degC', min: -70, max: 50 },
  windMPerS: { unit: 'm/s', min: 0, max: 60 },
  humidityPercent: { unit: '%', min: 0, max: 100 },
  radiationMJPerM2: { unit: 'MJ/m2', min: 0, max: 50 },
  sunshineHours: { unit: 'h', min: 0, max: 24 },
} as const

/** Name of a column. */
export type DailyColumn = keyof typeof DAILY_COLUMNS

/** All columns. */
export const DAILY_COLUMN_NAMES = Object.keys(DAILY_COLUMNS) as readonly DailyColumn[]

/** Columns without which there is no record. */
const NEEDED_COLUMNS = ['rainMm', 'minC', 'maxC'] as const satisfies readonly DailyColumn[]

/** Whether a day without a figure of this column is no day of a record. */
export const isNeededColumn = (name: DailyColumn): boolean => NEEDED_COLUMNS.some((needed) => needed === name)

/** Where a record was taken. */
export type Station = {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly altitudeM: number
  /** Height of the wind gauge over the ground, m. */
  readonly windHeightM: number
}

/** Days of weather as columns, one entry a day from `startDay` on; NaN where nothing is known. */
export type DailyRecord = {
  /** Days from 1970-01-01 to the first day. */
  readonly startDay: number
  readonly days: number
  readonly columns: { readonly [name in DailyColumn]: Float64Array }
}

/** A record of so many days with nothing in it yet; the caller fills the columns before it hands the record on. */
export const emptyRecord = (startDay: number, days: number): DailyRecord => {
  const column = () => new Float64Array(days).fill(NaN)
  return {
    startDay,
    days,
    columns: {
      rainMm: column(),
      minC: column(),
      maxC: column(),
      meanC: column(),
      windMPerS: column(),
      humidityPercent: column(),
      radiationMJPerM2: column(),
      sunshineHours: column(),
    },
  }
}
