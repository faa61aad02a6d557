import { expect, test } from 'vitest'
import type { Course, Machine, Place } from '../course/course.ts'
import { courseFromCount } from '../course/rough-course.ts'
import { lonLat, planeAt } from '../ground/plane.ts'
import { machineTravelMinutes, placesOf, travelMinutes } from './places.ts'

const HOME = lonLat(-4.9, 53.7)
if (!HOME.ok) throw new Error('the origin lies on the globe')
const plane = planeAt(HOME.value)

/** A pair of degrees from metres east and north of the shed. */
const at = (x: number, y: number): [number, number] => {
  const { lonDeg, latDeg } = plane.toLonLat({ x, y })
  return [lonDeg, latDeg]
}

const rough = courseFromCount({ greens: 2, totalAreaM2: 1000 })
if (!rough.ok) throw new Error(rough.error.type)

/** A shed at the origin, a bay 300 m north, greens 400 m east and 400 m east and north. */
const courseWith = (places: readonly Place[]): Course => ({
  ...rough.value.course,
  greens: rough.value.course.greens.map((green, k) => ({ ...green, id: `g${k}`, at: at(400, 400 * k) })),
  places: [
    { id: 'shed', name: 'Shed', kind: 'shed', at: at(0, 0) },
    { id: 'bay', name: 'Bay', kind: 'sandBay', at: at(0, 300) },
    ...places,
  ],
})

const track = (id: string, line: [number, number][], oneWay?: boolean): Place => ({
  id,
  name: id,
  kind: 'track',
  at: line[0] ?? [0, 0],
  line,
  ...(oneWay === undefined ? {} : { oneWay }),
})

const area = (kind: 'water' | 'noGo', west: number, east: number, south: number, north: number): Place => ({
  id: kind,
  name: kind,
  kind,
  at: at(west, south),
  outline: [[at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)]],
})

const wayM = (course: Course, from: string, to: string): number => {
  const places = placesOf(course, ['g0', 'g1'])
  const count = places.ids.length
  return places.wayM[places.ids.indexOf(from) * count + places.ids.indexOf(to)] ?? Number.NaN
}

test('without tracks a way is straight times the detour: 400 m x 1.3', () => {
  expect(wayM(courseWith([]), 'shed', 'g0')).toBeCloseTo(520, 4)
  expect(wayM(courseWith([]), 'shed', 'bay')).toBeCloseTo(390, 4)
})

test('a drawn track shortens a way, a one-way track only its own way', () => {
  const line = [at(0, 0), at(400, 0)]
  expect(wayM(courseWith([track('t', line)]), 'shed', 'g0')).toBeCloseTo(400, 4)
  expect(wayM(courseWith([track('t', line)]), 'g0', 'shed')).toBeCloseTo(400, 4)
  expect(wayM(courseWith([track('t', line, true)]), 'shed', 'g0')).toBeCloseTo(400, 4)
  expect(wayM(courseWith([track('t', line, true)]), 'g0', 'shed')).toBeCloseTo(520, 4)
})

test('water is gone round, and crossed on a track', () => {
  // Round the nearer corners at 100 and 300 east, 50 north: 1.3 x (2 hypot(100, 50) + 200).
  const pond = area('water', 100, 300, -90, 50)
  expect(wayM(courseWith([pond]), 'shed', 'g0')).toBeCloseTo(1.3 * (2 * Math.hypot(100, 50) + 200), 4)
  expect(wayM(courseWith([pond, track('bridge', [at(0, 0), at(400, 0)])]), 'shed', 'g0')).toBeCloseTo(400, 4)
})

test('no-go ground is not crossed on a track either', () => {
  const lawn = area('noGo', 100, 300, -90, 50)
  expect(wayM(courseWith([lawn, track('t', [at(0, 0), at(400, 0)])]), 'shed', 'g0')).toBeGreaterThan(520)
})

test('a green shut in on all sides is named, and reached straight so that it can still be planned', () => {
  const shut = area('noGo', 350, 450, -50, 50)
  expect(placesOf(courseWith([shut]), ['g0', 'g1']).cutOff).toEqual(['g0'])
  expect(wayM(courseWith([shut]), 'shed', 'g0')).toBeCloseTo(520, 4)
})

test('a dresser goes slower from the bay to a green, where its loaded speed is told', () => {
  const [machine] = rough.value.course.machines
  if (machine === undefined) throw new Error('a rough course has machines')
  const dresser: Machine = { ...machine, travelMPerS: 4, loadedTravelMPerS: 2 }
  const places = placesOf(courseWith([]), ['g0', 'g1'])
  const loaded = machineTravelMinutes(places, dresser)
  // Bay to g0: 500 m x 1.3 = 650 m at 2 m/s = 325 s; back at 4 m/s = 162.5 s.
  expect([loaded[1 * 4 + 2], loaded[2 * 4 + 1]]).toEqual([6, 3])
  expect(travelMinutes(places, 4)[1 * 4 + 2]).toBe(3)
  expect(machineTravelMinutes(places, { ...machine, travelMPerS: 4 })).toEqual(travelMinutes(places, 4))
})
