import type { ArchiveError, DailyColumn, DayGap, HistoryError, Refusal } from '@swardwright/engine'
import { counted, decimal } from './numbers.ts'

/** What the columns of a daily record are called. */
export const COLUMN_WORDS: Readonly<Record<DailyColumn, string>> = {
  rainMm: 'rain',
  minC: 'coldest of the day',
  maxC: 'warmest of the day',
  meanC: 'mean temperature',
  windMPerS: 'wind',
  humidityPercent: 'humidity',
  radiationMJPerM2: 'radiation',
  sunshineHours: 'sunshine',
}

const unitWords = (unit: string): string => unit.replace('degC', '°C').replace('m2', 'm²')

/** Why a row of a record, or one cell of it, was not taken: a sentence without a full stop. */
export const refusalWords = (refusal: Refusal): string => {
  switch (refusal.why) {
    case 'tooFewCells':
      return `the row has ${counted(refusal.cells, 'cell', 'cells')}; it must have at least ${refusal.expected}`
    case 'badDate':
      return `'${refusal.received}' is no day of the calendar written ${refusal.format}`
    case 'duplicateDay':
      return `${refusal.date} was in row ${refusal.firstRow} already`
    case 'notANumber':
      return `${COLUMN_WORDS[refusal.column]} is '${refusal.received}', which is no number`
    case 'outOfRange': {
      const unit = unitWords(refusal.unit)
      return `${COLUMN_WORDS[refusal.column]} is ${decimal(refusal.received, 2)} ${unit}; it must be ${refusal.min} to ${refusal.max} ${unit} (is the unit right?)`
    }
    case 'minAboveMax':
      return `the coldest of the day is ${decimal(refusal.minC, 1)} °C but the warmest is ${decimal(refusal.maxC, 1)} °C`
  }
}

/** Why a file cannot be read as daily weather at all: a sentence without a full stop. */
export const historyErrorWords = (error: HistoryError): string => {
  switch (error.type) {
    case 'noHeader':
      return `there is no line of column names after ${counted(error.skipLines, 'skipped line', 'skipped lines')}`
    case 'noColumn':
      return `${error.field} should be in column '${error.column}', but the columns are ${error.present.join(', ')}`
    case 'noRows': {
      const [first] = error.refused
      return first === undefined
        ? 'there are no rows'
        : `no row could be read; row ${first.row}: ${refusalWords(first)}`
    }
    case 'tooLong':
      return `the dates span ${error.days} days; the most is ${error.max} (is one of them mistyped?)`
  }
}

/** Why an answer of a weather archive can't be used: a sentence without a full stop. */
export const archiveErrorWords = (error: ArchiveError): string => {
  switch (error.type) {
    case 'refusedByService':
      return `the archive refused: ${error.reason}`
    case 'notDaily':
      return `the archive's answer has no ${error.field}`
    case 'otherUnit':
      return `${error.field} is ${error.received ?? 'not told'}; ${error.asked} was asked for`
    case 'noHeader':
    case 'noColumn':
    case 'noRows':
    case 'tooLong':
      return historyErrorWords(error)
  }
}

/** A stretch without figures: 'no wind on 3 days, 2020-01-04 to 2020-01-06'. */
export const gapWords = ({ column, from, to, days }: DayGap): string => {
  const what = column === 'day' ? 'no row' : `no ${COLUMN_WORDS[column]}`
  return days === 1 ? `${what} on ${from}` : `${what} on ${decimal(days, 0)} days, ${from} to ${to}`
}
