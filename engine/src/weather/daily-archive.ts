import { isRecord } from '../is-record.ts'
import { fail, ok, type Result } from '../result.ts'
import { dayNumber } from '../time/calendar.ts'
import { DAILY_COLUMNS, isNeededColumn, type DailyColumn } from './daily-record.ts'
import { layDays, type DayRow, type History, type HistoryError, type Refusal } from './history.ts'

/** The daily variables of the open archive that are read, by the API's own names, with the unit that must be asked for. */
export const ARCHIVE_VARIABLES = {
  rainMm: { name: 'precipitation_sum', unit: 'mm' },
  minC: { name: 'temperature_2m_min', unit: '°C' },
  maxC: { name: 'temperature_2m_max', unit: '°C' },
  windMPerS: { name: 'wind_speed_10m_mean', unit: 'm/s' },
  radiationMJPerM2: { name: 'shortwave_radiation_sum', unit: 'MJ/m²' },
} as const satisfies Partial<Record<DailyColumn, { readonly name: string; readonly unit: string }>>

/** Why an answer of the archive cannot be used. */
export type ArchiveError =
  | HistoryError
  | { readonly type: 'refusedByService'; readonly reason: string }
  | { readonly type: 'notDaily'; readonly field: string }
  | {
      readonly type: 'otherUnit'
      readonly field: string
      readonly asked: string
      readonly received: string | null
    }

/** A record out of the archive, with the height of the ground there, m, where the answer tells it. */
export type Archive = { readonly history: History; readonly altitudeM: number | null }

type Column = { readonly name: DailyColumn; readonly values: readonly unknown[] }

/** The columns that are there, each in the unit asked for. Rain and temperatures must be there. */
const columnsOf = (
  daily: Readonly<Record<string, unknown>>,
  units: Readonly<Record<string, unknown>>,
): Result<readonly Column[], ArchiveError> => {
  const columns: Column[] = []
  for (const [key, { name, unit }] of Object.entries(ARCHIVE_VARIABLES)) {
    const values = daily[name]
    const column = key as keyof typeof ARCHIVE_VARIABLES
    if (!Array.isArray(values)) {
      if (isNeededColumn(column)) return fail({ type: 'notDaily', field: `daily.${name}` })
      continue
    }
    const received = units[name]
    if (received !== unit)
      return fail({
        type: 'otherUnit',
        field: `daily_units.${name}`,
        asked: unit,
        received: typeof received === 'string' ? received : null,
      })
    columns.push({ name: column, values })
  }
  return ok(columns)
}

/** One day; figures out of their range are refused, and a day without its rain or temperatures is a row with gaps. */
const rowOf = (
  label: unknown,
  index: number,
  columns: readonly Column[],
  refused: Refusal[],
): DayRow | undefined => {
  const row = index + 1
  const day = typeof label === 'string' ? dayNumber(label) : NaN
  if (Number.isNaN(day)) {
    refused.push({ row, why: 'badDate', received: String(label).slice(0, 40), format: 'yyyy-mm-dd' })
    return undefined
  }
  const figures = new Map<DailyColumn, number>()
  for (const { name, values } of columns) {
    const value = values[index] ?? null
    if (value === null) continue
    const { unit, min, max } = DAILY_COLUMNS[name]
    if (typeof value !== 'number' || !Number.isFinite(value))
      refused.push({ row, why: 'notANumber', column: name, received: JSON.stringify(value).slice(0, 40) })
    else if (value < min || value > max)
      refused.push({ row, why: 'outOfRange', column: name, received: value, unit, min, max })
    else figures.set(name, value)
  }
  return { day, line: row, figures }
}

/**
 * Reads the daily part of an answer of the open weather archive (`daily.time`, `daily.precipitation_sum`, ...) as a record. The units must be those of
 * `ARCHIVE_VARIABLES`: they are asked for, so an answer in others is not an answer to the question. Days and figures that are missing are gaps.
 */
export const readArchive = (json: unknown): Result<Archive, ArchiveError> => {
  if (!isRecord(json)) return fail({ type: 'notDaily', field: 'daily' })
  const { error, reason, daily, daily_units: units, elevation } = json
  if (error === true)
    return fail({ type: 'refusedByService', reason: typeof reason === 'string' ? reason : 'no reason given' })
  if (!isRecord(daily) || !Array.isArray(daily['time']))
    return fail({ type: 'notDaily', field: 'daily.time' })
  const columns = columnsOf(daily, isRecord(units) ? units : {})
  if (!columns.ok) return columns
  const refused: Refusal[] = []
  const rows = daily['time'].flatMap((label, i) => rowOf(label, i, columns.value, refused) ?? [])
  const history = layDays(
    rows,
    columns.value.map(({ name }) => name),
    refused,
  )
  if (!history.ok) return history
  return ok({
    history: history.value,
    altitudeM: typeof elevation === 'number' && Number.isFinite(elevation) ? elevation : null,
  })
}
