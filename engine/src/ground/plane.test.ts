import { expect, test } from 'vitest'
import { lonLat, planeAt, type LocalPoint, type LonLat } from './plane.ts'

const at = (lonDeg: number, latDeg: number): LonLat => {
  const made = lonLat(lonDeg, latDeg)
  if (!made.ok) throw new Error(`bad test place ${lonDeg} ${latDeg}`)
  return made.value
}

test('a minute of latitude and of longitude at 45 N measure what the series for a degree gives', () => {
  // Length of a degree on WGS84 at 45 N: 111,131.745 m of latitude, 78,846.806 m of longitude
  // (series 111132.954 - 559.822 cos 2phi + 1.175 cos 4phi and 111412.84 cos phi - 93.5 cos 3phi + 0.118 cos 5phi, NGA; worked by hand).
  const plane = planeAt(at(7, 45))
  expect(plane.toLocal(at(7, 45 + 1 / 120)).y - plane.toLocal(at(7, 45 - 1 / 120)).y).toBeCloseTo(
    111_131.745 / 60,
    1,
  )
  expect(plane.toLocal(at(7 + 1 / 60, 45)).x).toBeCloseTo(78_846.806 / 60, 1)
})

test('there and back returns the same place within a hundredth of a millimetre, up to 5 km off and as far north as 64', () => {
  for (const latDeg of [-43.5, 0, 37, 56, 64]) {
    const plane = planeAt(at(-6.2, latDeg))
    for (const point of [
      { x: 0, y: 0 },
      { x: 25, y: -30 },
      { x: -3000, y: 4000 },
    ]) {
      const back = plane.toLocal(plane.toLonLat(point))
      expect(Math.hypot(back.x - point.x, back.y - point.y)).toBeLessThan(1e-5)
    }
  }
})

test('places outside the globe are refused with field, unit and range', () => {
  expect(lonLat(181, 0)).toEqual({
    ok: false,
    error: { type: 'outOfRange', field: 'lonDeg', unit: 'deg', min: -180, max: 180, received: 181 },
  })
  expect(lonLat(0, Number.NaN)).toMatchObject({ ok: false, error: { field: 'latDeg', max: 85 } })
})

test('degrees and metres cannot be mixed', () => {
  const plane = planeAt(at(0, 50))
  // @ts-expect-error a local point is not a place
  const wrong = (point: LocalPoint) => plane.toLocal(point)
  // @ts-expect-error a place is not a local point
  const alsoWrong = (place: LonLat) => plane.toLonLat(place)
  expect([wrong, alsoWrong]).toHaveLength(2)
})
