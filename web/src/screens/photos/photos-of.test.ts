import { expect, it } from 'vitest'
import { photoAlt, photosByDay, type PhotoTold } from './photos-of.ts'

const photo = (n: number, at: string, words?: string): PhotoTold => ({
  entry: `entry ${n}`,
  author: 'Maren',
  at,
  value: {
    sha256: String(n).repeat(64),
    type: 'image/jpeg',
    bytes: 9,
    purpose: 'recovery',
    ...(words === undefined ? {} : { words }),
  },
})

it('photos lie by the course’s own day, the latest first, in whatever order they came', () => {
  // 23:30 UTC on the 10th is half past midnight on the 11th in British summer time.
  const days = photosByDay(
    [photo(1, '2026-08-10T23:30:00Z'), photo(3, '2026-08-11T12:00:00Z'), photo(2, '2026-08-10T08:00:00Z')],
    'Europe/London',
  )
  expect(days.map(({ date, photos }) => [date, photos.map(({ entry }) => entry)])).toEqual([
    ['2026-08-11', ['entry 3', 'entry 1']],
    ['2026-08-10', ['entry 2']],
  ])
})

it('a photo is told to those who don’t see it: what, where, when, by whom, and its note', () => {
  expect(photoAlt(photo(1, '2026-08-11T05:30:00Z', 'open holes'), '7 Long Meadow', 'Europe/London')).toBe(
    'The surface, 7 Long Meadow: photo of Tue 11 Aug 2026, 06:30, Maren. open holes',
  )
})
