import { expect, test } from 'vitest'
import { planPasses } from './passes.ts'
import type { PassSettings } from './pass-settings.ts'
import { runsTowards } from './room-beyond.ts'

const at = (x: number, y: number) => ({ x, y })
const box = (west: number, east: number, south: number, north: number) => [
  at(west, south),
  at(east, south),
  at(east, north),
  at(west, north),
]

/** Ten runs north over 10 m square, each 1 m wide. */
const settings: PassSettings = {
  widthM: 1,
  overlapM: 0,
  speedMPerS: 1,
  turnRadiusM: 0,
  turnStyle: 'lift',
  laps: 0,
  order: 'backAndForth',
}
const { runs } = planPasses({ outer: box(0, 10, 0, 10), holes: [] }, settings, 0)

test('runs that end a metre before a bunker are named, whichever end it lies at; those beside it are not', () => {
  // The bunker spans x from 3.2 to 5.8: strips 3 to 4, 4 to 5 and 5 to 6 reach it, by a side at least.
  expect(runsTowards(runs, box(3.2, 5.8, 11, 14), { widthM: 1, roomM: 2 })).toEqual([3, 4, 5])
  expect(runsTowards(runs, box(3.2, 5.8, -4, -1), { widthM: 1, roomM: 2 })).toEqual([3, 4, 5])
})

test('a bunker beyond the room needed, or at the side of the green, is nobody’s worry', () => {
  expect(runsTowards(runs, box(3.2, 5.8, 13, 16), { widthM: 1, roomM: 2 })).toEqual([])
  expect(runsTowards(runs, box(11, 14, 3, 6), { widthM: 1, roomM: 2 })).toEqual([])
})
