import { expect, test } from 'vitest'
import { lengthsFrom, linksByNode } from './shortest-path.ts'
import { waysBetween, type TravelGround } from './travel.ts'

const open: TravelGround = { detourFactor: 1.3, points: [], tracks: [], noGo: [] }
const at = (x: number, y: number) => ({ x, y })

const lengthM = (
  from: { x: number; y: number },
  to: { x: number; y: number },
  ground: TravelGround,
): number => waysBetween([from, to], ground)[1] ?? Number.NaN

test('without tracks a way is the straight line times the detour: 300 m, 400 m, 1.3 gives 650 m', () => {
  expect(lengthM(at(0, 0), at(300, 400), open)).toBeCloseTo(650, 9)
  expect(lengthM(at(5, 5), at(5, 5), open)).toBe(0)
})

test('a way goes round a pond by its corners', () => {
  // Pond 20 x 20 across the line; corners at (40, 10) and (60, 10): 2 x hypot(40, 10) + 20.
  const pond = [at(40, -12), at(60, -12), at(60, 10), at(40, 10)]
  const straight = 2 * Math.hypot(40, 10) + 20
  expect(lengthM(at(0, 0), at(100, 0), { ...open, noGo: [pond] })).toBeCloseTo(1.3 * straight, 9)
  expect(lengthM(at(0, 0), at(100, 0), { ...open, noGo: [pond.toReversed()] })).toBeCloseTo(1.3 * straight, 9)
})

test('a place shut in on all sides cannot be reached, and that is said', () => {
  const wall = [at(-5, -5), at(5, -5), at(5, 5), at(-5, 5)]
  expect(lengthM(at(0, 0), at(50, 0), { ...open, noGo: [wall] })).toBe(Infinity)
})

test('tracks are taken where they are shorter than open ground, and a one-way track only its own way', () => {
  const ground: TravelGround = {
    ...open,
    detourFactor: 2,
    points: [at(0, 0), at(100, 0), at(100, 100), at(0, 100)],
    tracks: [
      { from: 0, to: 1, isOneWay: true },
      { from: 1, to: 2 },
      { from: 2, to: 3 },
      { from: 3, to: 0 },
    ],
  }
  expect(lengthM(at(0, 0), at(100, 0), ground)).toBeCloseTo(100, 9)
  // Back: the ground straight across costs 200, the tracks round 300.
  expect(lengthM(at(100, 0), at(0, 0), ground)).toBeCloseTo(200, 9)
  expect(lengthM(at(100, 0), at(0, 0), { ...ground, detourFactor: 5 })).toBeCloseTo(300, 9)
  const winding = { ...ground, tracks: [{ from: 0, to: 1, lengthM: 180 }] }
  expect(lengthM(at(0, 0), at(100, 0), winding)).toBeCloseTo(180, 9)
})

test('a track bridges a pond that open ground must go round, but not a no-go surface', () => {
  const pond = [at(40, -500), at(60, -500), at(60, 500), at(40, 500)]
  const bridge = { points: [at(0, 0), at(100, 0)], tracks: [{ from: 0, to: 1 }] }
  expect(lengthM(at(0, 0), at(100, 0), { ...open, ...bridge, tracksOnly: [pond] })).toBeCloseTo(100, 9)
  expect(lengthM(at(0, 0), at(100, 0), { ...open, ...bridge, noGo: [pond] })).toBeGreaterThan(1000)
})

test('the table of ways agrees with each way found alone, and differs there and back on one-way tracks', () => {
  const ground: TravelGround = {
    ...open,
    points: [at(0, 0), at(100, 0), at(100, 100)],
    tracks: [
      { from: 0, to: 1, isOneWay: true },
      { from: 1, to: 2 },
    ],
    noGo: [[at(20, 20), at(80, 20), at(80, 80), at(20, 80)]],
  }
  const places = [at(0, 0), at(100, 100), at(50, -10), at(50, 50)]
  const waysM = waysBetween(places, ground)
  const from = (start: number): Float64Array => waysM.subarray(start * places.length)
  places.forEach((start, i) => {
    places.forEach((end, j) => {
      // More places on the map shorten no way: they are no crossroads nearer than the straight line between.
      if (i !== j) expect(from(i)[j]).toBeCloseTo(lengthM(start, end, ground), 9)
    })
  })
  // There by the tracks, 200 m; back round the corner (20, 80) of the barred square: 1.3 x 2 x hypot(80, 20).
  expect(from(0)[1]).toBeCloseTo(200, 9)
  expect(from(1)[0]).toBeCloseTo(1.3 * 2 * Math.hypot(80, 20), 9)
  // The last place lies inside the barred square.
  expect(from(0)[3]).toBe(Infinity)
})

test('shortest path equals trying every path on small networks', () => {
  let state = 7
  const random = () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647
  for (let round = 0; round < 60; round++) {
    const links = Array.from({ length: 12 }, () => ({
      from: Math.floor(random() * 6),
      to: Math.floor(random() * 6),
      lengthM: random() * 10,
    }))
    const walk = (node: number, seen: readonly number[]): number =>
      node === 5
        ? 0
        : Math.min(
            Infinity,
            ...links
              .filter((link) => link.from === node && !seen.includes(link.to))
              .map((link) => link.lengthM + walk(link.to, [...seen, link.to])),
          )
    expect(lengthsFrom(linksByNode(6, links), 0)[5]).toBeCloseTo(walk(0, [0]), 9)
  }
})
