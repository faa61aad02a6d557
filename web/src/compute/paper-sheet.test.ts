import { expect, it } from 'vitest'
import { paperEntries, timeFault } from './paper-sheet.ts'

/** Moments by hand: London is an hour ahead of UTC in August. */
const known = {
  date: '2026-08-10',
  timeZone: 'Europe/London',
  nowMs: Date.parse('2026-08-10T17:00:00Z'),
}

it('takes the time on the paper as when the green was finished, on the course’s clock', () => {
  expect(paperEntries([{ green: 'g01', time: '10:40', note: '' }], known)).toEqual([
    { green: 'g01', finishedMs: Date.parse('2026-08-10T09:40:00Z'), note: null },
  ])
})

it('puts a note at the time of its line, else at now, and leaves empty lines out', () => {
  const lines = [
    { green: 'g01', time: '9:05', note: ' wet front ' },
    { green: 'g02', time: '', note: 'not reached' },
    { green: 'g03', time: '', note: '  ' },
  ]
  const atMs = Date.parse('2026-08-10T08:05:00Z')
  expect(paperEntries(lines, known)).toEqual([
    { green: 'g01', finishedMs: atMs, note: { words: 'wet front', atMs } },
    { green: 'g02', finishedMs: null, note: { words: 'not reached', atMs: known.nowMs } },
  ])
})

it('says what is wrong with a time', () => {
  expect(['', '10:40', '25:00', 'ten', '18:00', '18:01'].map((time) => timeFault(time, known))).toEqual([
    null,
    null,
    'noClock',
    'noClock',
    null,
    'afterNow',
  ])
})
