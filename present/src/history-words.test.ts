import { describe, expect, it } from 'vitest'
import { readArchive, readHistory, serviceLayout } from '@swardwright/engine'
import { archiveErrorWords, gapWords, historyErrorWords, refusalWords } from './history-words.ts'

const read = (text: string) => {
  const layout = serviceLayout(text)
  if (layout === undefined) throw new Error('the text has the service’s header')
  return readHistory(text, layout)
}

describe('words about a daily record', () => {
  it('tell every kind of row that is not taken', () => {
    const history = read(`date,rain,maxtp,mintp
2024-01-01,1,9,3
2024-01-01,1,9,3
2024-02-30,1,9,3
2024-01-03,wet,9,3
2024-01-04,1,2,3
2024-01-05,-1,9,3
2024-01-06,1,9
`)
    if (!history.ok) throw new Error('one row can be read')
    expect(history.value.refused.map((refusal) => refusalWords(refusal))).toEqual([
      '2024-01-01 was in row 2 already',
      "'2024-02-30' is no day of the calendar written yyyy-mm-dd",
      "rain is 'wet', which is no number",
      'the coldest of the day is 3 °C but the warmest is 2 °C',
      'rain is -1 mm; it must be 0 to 2000 mm (is the unit right?)',
      'the row has 3 cells; it must have at least 4',
    ])
  })

  it('tell why a file can’t be read', () => {
    const empty = read('date,rain,maxtp,mintp\n')
    expect(empty.ok ? '' : historyErrorWords(empty.error)).toBe('there are no rows')
    expect(historyErrorWords({ type: 'noHeader', skipLines: 1 })).toBe(
      'there is no line of column names after 1 skipped line',
    )
    expect(
      historyErrorWords({ type: 'noColumn', field: 'rainMm', column: 'Rain', present: ['Day', 'Low'] }),
    ).toBe("rainMm should be in column 'Rain', but the columns are Day, Low")
  })

  it('tell why an archive can’t be read', () => {
    const wrong = readArchive({ daily: { time: [] } })
    expect(wrong.ok ? '' : archiveErrorWords(wrong.error)).toBe(
      "the archive's answer has no daily.precipitation_sum",
    )
  })

  it('tell gaps by their days', () => {
    const gap = { column: 'windMPerS', from: '2020-01-04', to: '2020-01-06', days: 3 } as const
    expect(gapWords(gap)).toBe('no wind on 3 days, 2020-01-04 to 2020-01-06')
    expect(gapWords({ ...gap, column: 'day', to: gap.from, days: 1 })).toBe('no row on 2020-01-04')
  })
})
