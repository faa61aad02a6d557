import { expect, test } from 'vitest'
import { trackNet, type TrackLine } from './track-net.ts'
import { waysBetween } from './travel.ts'

const at = (x: number, y: number) => ({ x, y })
const both = (...line: { x: number; y: number }[]): TrackLine => ({ line, isOneWay: false })

/** Off the tracks a metre costs five, so that ways keep to them. */
const lengthM = (lines: readonly TrackLine[], from: { x: number; y: number }, to: { x: number; y: number }) =>
  waysBetween([from, to], { detourFactor: 5, noGo: [], ...trackNet(lines, [from, to]) })[1] ?? Number.NaN

test('tracks that cross between their points meet there', () => {
  const cross = [both(at(-100, 0), at(100, 0)), both(at(0, -100), at(0, 100))]
  expect(lengthM(cross, at(-100, 0), at(0, 100))).toBeCloseTo(200, 9)
})

test('a track drawn to within 8 m of another joins it; one that ends further off does not', () => {
  const near = [both(at(-100, 0), at(100, 0)), both(at(20, 5), at(20, 100))]
  expect(lengthM(near, at(-100, 0), at(20, 100))).toBeCloseTo(120 + 5 + 95, 9)
  const far = [both(at(-100, 0), at(100, 0)), both(at(20, 12), at(20, 100))]
  // The gap of 12 m is open ground at five for one.
  expect(lengthM(far, at(-100, 0), at(20, 100))).toBeGreaterThan(120 + 88 + 12)
})

test('one gets on a long straight track where it comes nearest, not only at its ends', () => {
  // 10 m to the track, 30 m along, 10 m off it: 5 x 10 + 30 + 5 x 10, and straight over the ground 5 x 30 = 150 is more.
  expect(lengthM([both(at(-500, 0), at(500, 0))], at(0, 10), at(30, 10))).toBeCloseTo(130, 9)
})

test('a one-way track stays one way on all its pieces', () => {
  const ring = [{ line: [at(0, 0), at(100, 0), at(100, 100), at(0, 100), at(0, 0)], isOneWay: true }]
  expect(lengthM(ring, at(0, 0), at(50, 0))).toBeCloseTo(50, 9)
  expect(lengthM(ring, at(100, 0), at(20, 0))).toBeCloseTo(320, 9)
})

test('no tracks make an empty net, and a track of one repeated point is none', () => {
  expect(trackNet([], [at(0, 0)])).toEqual({ points: [], tracks: [] })
  expect(trackNet([both(at(1, 1), at(1, 1))], [])).toEqual({ points: [], tracks: [] })
})
