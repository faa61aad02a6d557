import { expect, test } from 'vitest'
import { shortestPath } from './shortest-path.ts'
import { travelMin, travelWay, type TravelGround } from './travel.ts'

const open: TravelGround = { detourFactor: 1.3, points: [], tracks: [], noGo: [] }
const at = (x: number, y: number) => ({ x, y })

const lengthM = (
  from: { x: number; y: number },
  to: { x: number; y: number },
  ground: TravelGround,
): number => {
  const way = travelWay(from, to, ground)
  if (!way.ok) throw new Error(way.error.type)
  return way.value.lengthM
}

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
  expect(travelWay(at(0, 0), at(50, 0), { ...open, noGo: [wall] })).toEqual({
    ok: false,
    error: { type: 'noWay' },
  })
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

test('times follow the speed loaded and empty', () => {
  const way = { lengthM: 600, by: 'straight', line: [] } as const
  const speeds = { emptyMPerS: 5, loadedMPerS: 2.5 }
  expect(travelMin(way, speeds, 'empty')).toBe(2)
  expect(travelMin(way, speeds, 'loaded')).toBe(4)
})

test('a detour factor out of range is refused', () => {
  expect(travelWay(at(0, 0), at(1, 0), { ...open, detourFactor: 0.5 })).toMatchObject({
    error: { type: 'outOfRange', field: 'detourFactor', min: 1, max: 5 },
  })
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
    expect(shortestPath(6, links, 0, 5)?.lengthM ?? Infinity).toBeCloseTo(walk(0, [0]), 9)
  }
})
