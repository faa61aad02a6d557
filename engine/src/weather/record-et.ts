import { dateOfDay, dayOfYear } from '../time/calendar.ts'
import type { DailyRecord, Station } from './daily-record.ts'
import { referenceEvapotranspiration, type EtAnswer, type Moisture, type Sun } from './evapotranspiration.ts'

/** Evapotranspiration of one day of a record: null where a temperature is missing. */
export type RecordEt = { readonly date: string; readonly answer: EtAnswer | null }

const known = (value: number | undefined): number | undefined =>
  value === undefined || Number.isNaN(value) ? undefined : value

/** Reference evapotranspiration of every day of a record, each with the fall-backs it took. Measured radiation goes before sunshine. */
export const recordEvapotranspiration = (record: DailyRecord, station: Station): RecordEt[] =>
  Array.from({ length: record.days }, (_, i) => {
    const date = dateOfDay(record.startDay + i)
    const of = (name: keyof DailyRecord['columns']) => known(record.columns[name][i])
    const [minC, maxC, humidity] = [of('minC'), of('maxC'), of('humidityPercent')]
    const [radiation, sunshine] = [of('radiationMJPerM2'), of('sunshineHours')]
    if (minC === undefined || maxC === undefined) return { date, answer: null }
    const moisture: Moisture | undefined =
      humidity === undefined ? undefined : { meanHumidityPercent: humidity }
    const sun: Sun | undefined =
      radiation !== undefined
        ? { radiationMJPerM2: radiation }
        : sunshine === undefined
          ? undefined
          : { sunshineHours: sunshine }
    const answer = referenceEvapotranspiration({
      dayOfYear: dayOfYear(date),
      latitudeDeg: station.latitudeDeg,
      altitudeM: station.altitudeM,
      minC,
      maxC,
      meanC: of('meanC'),
      moisture,
      windMPerS: of('windMPerS'),
      windHeightM: station.windHeightM,
      sun,
    })
    return { date, answer }
  })
