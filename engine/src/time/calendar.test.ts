import { expect, it } from 'vitest'
import { dayNumber, dayOfYear, parseDate } from './calendar.ts'

it('numbers the days of the year as FAO-56 table 2.5 does', () => {
  // FAO-56 Annex 2 table 2.5: 1 Mar 60, 1 Sep 244, 1 Oct 274, 31 Dec 365; one more from March in leap years.
  expect(['2023-03-01', '2023-09-01', '2023-10-01', '2023-12-31'].map(dayOfYear)).toEqual([60, 244, 274, 365])
  expect(['2024-03-01', '2024-12-31'].map(dayOfYear)).toEqual([61, 366])
})

it.each(['2025-02-30', '2025-13-01', '1/2/2025', '', '2025-1-2'])('does not take %s for a day', (text) => {
  expect(dayNumber(text)).toBeNaN()
  expect(parseDate('date', text)).toMatchObject({ ok: false, error: { type: 'wrongType', field: 'date' } })
})
