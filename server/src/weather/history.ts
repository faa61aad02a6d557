import {
  DAILY_COLUMN_NAMES,
  dayNumber,
  fail,
  ok,
  readArchive,
  readHistory,
  serviceLayout,
  type History,
  type Layout,
  type Result,
  type Station,
} from '@swardwright/engine'
import { momentFromMs, type HistoryOutcome, type KeptHistory } from '@swardwright/journal'
import { archiveErrorWords, historyErrorWords, refusalWords } from '@swardwright/present'
import type { CoursePlace } from './weatherService.ts'

/** A file as it was sent in. */
export type Upload = {
  readonly name: string
  readonly text: string
  readonly columns: Omit<
    Parameters<typeof readHistory>[1],
    'latitudeDeg' | 'longitudeDeg' | 'altitudeM'
  > | null
}

/** Rows refused that are listed one by one; all are counted. */
const LISTED = 200

const keptOf = (
  history: History,
  about: Pick<KeptHistory, 'source' | 'name' | 'receivedAt' | 'station' | 'stationAssumed'>,
): KeptHistory => ({
  ...about,
  from: history.from,
  to: history.to,
  rows: history.days,
  columns: Object.fromEntries(
    DAILY_COLUMN_NAMES.filter((name) => history.columns.includes(name)).map((name) => [
      name,
      Array.from(history.record.columns[name], (value) => (Number.isNaN(value) ? null : value)),
    ]),
  ),
  gaps: [...history.gaps],
  refused: history.refused
    .slice(0, LISTED)
    .map((refusal) => ({ row: refusal.row, why: refusalWords(refusal) })),
  refusedCount: history.refused.length,
})

/** A file of daily weather as a record, or one sentence why it is none. */
export const historyOfFile = (
  upload: Upload,
  course: CoursePlace,
  nowMs: number,
): Result<KeptHistory, string> => {
  const layout: Layout | undefined = upload.columns ?? serviceLayout(upload.text)
  if (layout === undefined)
    return fail('the layout is not known; say which column is the day, the rain, the coldest and the warmest')
  const read = readHistory(upload.text, layout)
  if (!read.ok) return fail(historyErrorWords(read.error))
  const { latitudeDeg, longitudeDeg, altitudeM } = layout
  const station: Station = {
    latitudeDeg: latitudeDeg ?? course.latitudeDeg,
    longitudeDeg: longitudeDeg ?? course.longitudeDeg,
    altitudeM: altitudeM ?? course.altitudeM,
    windHeightM: layout.windHeightM,
  }
  return ok(
    keptOf(read.value, {
      source: 'file',
      name: upload.name,
      receivedAt: momentFromMs(nowMs),
      station,
      stationAssumed: latitudeDeg === undefined || longitudeDeg === undefined || altitudeM === undefined,
    }),
  )
}

/** An answer of the archive as a record, or one sentence why it is none. */
export const historyOfArchive = (
  json: unknown,
  host: string,
  course: CoursePlace,
  nowMs: number,
): Result<KeptHistory, string> => {
  const read = readArchive(json)
  if (!read.ok) return fail(archiveErrorWords(read.error))
  return ok(
    keptOf(read.value.history, {
      source: 'archive',
      name: host,
      receivedAt: momentFromMs(nowMs),
      station: { ...course, altitudeM: read.value.altitudeM ?? course.altitudeM, windHeightM: 10 },
      stationAssumed: false,
    }),
  )
}

/** What is told of a record when it was taken in: everything but its figures. */
export const outcomeOf = (result: Result<KeptHistory, string>): HistoryOutcome => {
  if (!result.ok) return { kept: null, why: result.error }
  const { columns: _figures, ...kept } = result.value
  return { kept, why: null }
}

/** The part of a record from one day to another; null when it has none of them. Gaps stay whole, since they are told by their days. */
export const partOf = (
  history: KeptHistory,
  wanted: { readonly from?: string | undefined; readonly to?: string | undefined },
): KeptHistory | null => {
  const from = wanted.from === undefined || wanted.from < history.from ? history.from : wanted.from
  const to = wanted.to === undefined || wanted.to > history.to ? history.to : wanted.to
  if (from > to) return null
  const start = dayNumber(from) - dayNumber(history.from)
  const end = dayNumber(to) - dayNumber(history.from) + 1
  const columns: KeptHistory['columns'] = {}
  for (const name of DAILY_COLUMN_NAMES) {
    const figures = history.columns[name]
    if (figures !== undefined) columns[name] = figures.slice(start, end)
  }
  return {
    ...history,
    from,
    to,
    columns,
    gaps: history.gaps.filter((gap) => gap.from <= to && gap.to >= from),
  }
}
