import { fail, ok, type Result } from '../result.ts'
import { dateOfDay, dayNumber } from '../time/calendar.ts'
import { csvLines, type CsvLine } from './csv.ts'
import {
  DAILY_COLUMN_NAMES,
  DAILY_COLUMNS,
  emptyRecord,
  isNeededColumn,
  type DailyColumn,
  type DailyRecord,
} from './daily-record.ts'
import type { ColumnMap, HistoryMap, Layout } from './history-map.ts'

/** A row, or one cell of it, that was not taken. `row` is the line in the file. When `column` is an optional one, the rest of the row was kept. */
export type Refusal = { readonly row: number } & (
  | { readonly why: 'tooFewCells'; readonly cells: number; readonly expected: number }
  | { readonly why: 'badDate'; readonly received: string; readonly format: string }
  | { readonly why: 'duplicateDay'; readonly date: string; readonly firstRow: number }
  | { readonly why: 'notANumber'; readonly column: DailyColumn; readonly received: string }
  | {
      readonly why: 'outOfRange'
      readonly column: DailyColumn
      readonly received: number
      readonly unit: string
      readonly min: number
      readonly max: number
    }
  | { readonly why: 'minAboveMax'; readonly minC: number; readonly maxC: number }
)

/** Days on which a column has no figure (`day`: there is no row at all). Both ends included. */
export type DayGap = {
  readonly column: DailyColumn | 'day'
  readonly from: string
  readonly to: string
  readonly days: number
}

/** A record as read, with all that was not as it should be. */
export type History = {
  readonly record: DailyRecord
  /** Days with a row. */
  readonly days: number
  readonly from: string
  readonly to: string
  readonly gaps: readonly DayGap[]
  readonly refused: readonly Refusal[]
  /** Columns that the file has. */
  readonly columns: readonly DailyColumn[]
}

/** Why a file cannot be read at all. */
export type HistoryError =
  | { readonly type: 'noHeader'; readonly skipLines: number }
  | {
      readonly type: 'noColumn'
      readonly field: string
      readonly column: string
      readonly present: readonly string[]
    }
  | { readonly type: 'noRows'; readonly refused: readonly Refusal[] }
  | { readonly type: 'tooLong'; readonly days: number; readonly max: number }

/** Longest record: three centuries; a stray date would otherwise take all memory. */
const MAX_DAYS = 110_000

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

const DATE_PATTERNS: Readonly<Record<HistoryMap['dateFormat'], (text: string) => string>> = {
  'yyyy-mm-dd': (text) => text,
  yyyymmdd: (text) => text.replace(/^(\d{4})(\d{2})(\d{2})$/u, '$1-$2-$3'),
  'dd/mm/yyyy': (text) =>
    text.replace(
      /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/u,
      (_, d: string, m: string, y: string) => `${y}-${m.padStart(2, '0')}-${d.padStart(2, '0')}`,
    ),
  'dd-mon-yyyy': (text) =>
    text.replace(/^(\d{1,2})-([a-z]{3})-(\d{4})$/iu, (_, d: string, m: string, y: string) => {
      const month = MONTHS.indexOf(m.toLowerCase()) + 1
      return `${y}-${String(month).padStart(2, '0')}-${d.padStart(2, '0')}`
    }),
}

/** Day of a cell, NaN when it is none. A time of midnight after the date is let pass: some services write one. */
const dayOf = (text: string, format: HistoryMap['dateFormat']): number =>
  dayNumber(DATE_PATTERNS[format](text.replace(/[T ]00:00(:00)?$/u, '')))

/** Texts that mean 'no figure' in any file. */
const BLANKS = new Set(['', 'na', 'nan', 'null'])

const matches = (cell: string, value: string | number): boolean =>
  typeof value === 'number' ? cell !== '' && Number(cell) === value : cell === value.trim()

/** The figure of a cell in our unit; NaN when the file says there is none; undefined when it is no number. */
const figureOf = (cell: string, map: ColumnMap): number | undefined => {
  if (BLANKS.has(cell.toLowerCase()) || map.missing.some((value) => matches(cell, value))) return NaN
  if (map.trace !== undefined && matches(cell, map.trace.value)) return map.trace.as
  const value = Number(cell)
  return Number.isFinite(value) ? value * map.factor + map.offset : undefined
}

type Found = { readonly name: DailyColumn; readonly map: ColumnMap; readonly at: number }
/** One day as read. `line` says where it stood, from 1. */
export type DayRow = {
  readonly day: number
  readonly line: number
  readonly figures: ReadonlyMap<DailyColumn, number>
}

const readCell = ({ name, map }: Found, cell: string, row: number): number | Refusal => {
  const value = figureOf(cell, map)
  if (value === undefined) return { row, why: 'notANumber', column: name, received: cell.slice(0, 40) }
  const { unit, min, max } = DAILY_COLUMNS[name]
  return value < min || value > max
    ? { row, why: 'outOfRange', column: name, received: value, unit, min, max }
    : value
}

/** One line as a row; refusals go to the list, and a refused row is undefined. */
const readRow = (
  line: CsvLine,
  found: readonly Found[],
  date: { readonly at: number; readonly format: HistoryMap['dateFormat'] },
  refused: Refusal[],
): DayRow | undefined => {
  const row = line.line
  const expected = Math.max(date.at, ...found.map(({ at }) => at)) + 1
  if (line.cells.length < expected) {
    refused.push({ row, why: 'tooFewCells', cells: line.cells.length, expected })
    return undefined
  }
  const text = line.cells[date.at] ?? ''
  const day = dayOf(text, date.format)
  if (Number.isNaN(day)) {
    refused.push({ row, why: 'badDate', received: text.slice(0, 40), format: date.format })
    return undefined
  }
  const figures = new Map<DailyColumn, number>()
  let lost = false
  for (const one of found) {
    const value = readCell(one, line.cells[one.at] ?? '', row)
    if (typeof value === 'number') figures.set(one.name, value)
    else {
      refused.push(value)
      lost ||= isNeededColumn(one.name)
    }
  }
  const [minC, maxC] = [figures.get('minC') ?? NaN, figures.get('maxC') ?? NaN]
  if (minC > maxC) refused.push({ row, why: 'minAboveMax', minC, maxC })
  return lost || minC > maxC ? undefined : { day, line: row, figures }
}

/** Runs of days without a figure. */
const gapsOf = (name: DayGap['column'], missing: (i: number) => boolean, record: DailyRecord): DayGap[] => {
  const gaps: DayGap[] = []
  for (let i = 0; i < record.days; i++) {
    if (!missing(i)) continue
    const start = i
    while (i + 1 < record.days && missing(i + 1)) i++
    gaps.push({
      column: name,
      from: dateOfDay(record.startDay + start),
      to: dateOfDay(record.startDay + i),
      days: i - start + 1,
    })
  }
  return gaps
}

/** Lays rows on an unbroken row of days, the first of each day counting; tells gaps, and repeats beside what was refused before. */
export const layDays = (
  rows: readonly DayRow[],
  columns: readonly DailyColumn[],
  refusedBefore: readonly Refusal[],
): Result<History, HistoryError> => {
  const refused = [...refusedBefore]
  if (rows.length === 0) return fail({ type: 'noRows', refused })
  const first = rows.reduce((a, { day }) => Math.min(a, day), Infinity)
  const last = rows.reduce((a, { day }) => Math.max(a, day), -Infinity)
  const span = last - first + 1
  if (span > MAX_DAYS) return fail({ type: 'tooLong', days: span, max: MAX_DAYS })
  const record = emptyRecord(first, span)
  const lineOf = new Int32Array(span)
  let days = 0
  for (const { day, line, figures } of rows) {
    const i = day - first
    if (lineOf[i] !== 0) {
      refused.push({ row: line, why: 'duplicateDay', date: dateOfDay(day), firstRow: lineOf[i] ?? 0 })
      continue
    }
    lineOf[i] = line
    days++
    for (const [name, value] of figures) record.columns[name][i] = value
  }
  const gaps = [
    ...gapsOf('day', (i) => lineOf[i] === 0, record),
    ...columns.flatMap((name) =>
      gapsOf(name, (i) => lineOf[i] !== 0 && Number.isNaN(record.columns[name][i] ?? NaN), record),
    ),
  ]
  refused.sort((a, b) => a.row - b.row)
  return ok({ record, days, from: dateOfDay(first), to: dateOfDay(last), gaps, refused, columns })
}

/**
 * Reads daily weather from the text of a file. A row is refused when its date, or a figure of rain, minimum or maximum, makes no sense, and when the day was
 * there before; a senseless figure of another column is dropped and the row kept. Blank cells and missing days are gaps. Nothing is filled in.
 */
export const readHistory = (text: string, layout: Layout): Result<History, HistoryError> => {
  const lines = csvLines(text, layout.delimiter).filter(({ line }) => line > layout.skipLines)
  const [header, ...body] = lines
  if (header === undefined) return fail({ type: 'noHeader', skipLines: layout.skipLines })
  const place = (field: string, column: string): Result<number, HistoryError> => {
    const at = header.cells.indexOf(column)
    return at < 0 ? fail({ type: 'noColumn', field, column, present: header.cells }) : ok(at)
  }
  const dateAt = place('date', typeof layout.date === 'string' ? layout.date : layout.date.column)
  if (!dateAt.ok) return dateAt
  const found: Found[] = []
  for (const name of DAILY_COLUMN_NAMES) {
    const map = layout[name]
    if (map === undefined) continue
    const at = place(name, map.column)
    if (!at.ok) return at
    found.push({ name, map, at: at.value })
  }
  const refused: Refusal[] = []
  const rows = body.flatMap(
    (line) => readRow(line, found, { at: dateAt.value, format: layout.dateFormat }, refused) ?? [],
  )
  return layDays(
    rows,
    found.map(({ name }) => name),
    refused,
  )
}
