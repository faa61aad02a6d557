import { readFileSync } from 'node:fs'
import polygonClipping, { type Polygon as ClipPolygon } from 'polygon-clipping'
import { describe, expect, test } from 'vitest'
import { readCourse, readForecastText, readPrescription, OPERATIONS } from '@swardwright/engine'
import { demoFiles } from './demo-course.ts'
import { HOLES } from './demo/holes.ts'

const example = (name: string): string =>
  readFileSync(new URL(`../examples/${name}`, import.meta.url), 'utf8')

const reading = readCourse(example('demo-course.geojson'))
if (!reading.ok) throw new Error(JSON.stringify(reading.error))
const { course, assumed } = reading.value

type Spot = readonly [number, number]

/** Metres a degree at 53.71 N: lengths of a degree by the NGA series, as in engine/src/course/fixtures/small-file.ts. */
const local = ([lon, lat]: Spot): [number, number] => [(lon + 4.93) * 66_030.67, (lat - 53.71) * 111_299.59]

const outlines = course.greens.map((green) => {
  const [outer] = green.outline ?? []
  if (outer === undefined) throw new Error(`${green.id} has no outline`)
  return { id: green.id, ring: outer.slice(0, -1).map(local) }
})

/** The polygon library's area (shoelace over its own output), apart from the engine's. */
const areaOf = (parts: readonly ClipPolygon[]): number =>
  parts.reduce(
    (sum, [outer = []]) =>
      sum +
      Math.abs(
        outer.reduce((s, [x, y], i) => {
          const [nx, ny] = outer[(i + 1) % outer.length] ?? [x, y]
          return s + (x * ny - nx * y) / 2
        }, 0),
      ),
    0,
  )

const apartM = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1])

const moments = (ring: readonly Spot[]) => {
  let [area, sx, sy, xx, yy, xy] = [0, 0, 0, 0, 0, 0]
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] ?? [x, y]
    const c = (x * ny - nx * y) / 2
    area += c
    sx += (c * (x + nx)) / 3
    sy += (c * (y + ny)) / 3
    xx += (c * (x * x + x * nx + nx * nx)) / 6
    yy += (c * (y * y + y * ny + ny * ny)) / 6
    xy += (c * (x * ny + 2 * x * y + 2 * nx * ny + nx * y)) / 12
  })
  const [cx, cy] = [sx / area, sy / area]
  return { area, cx, cy, xx: xx / area - cx * cx, yy: yy / area - cy * cy, xy: xy / area - cx * cy }
}

/** The ellipse of the same area, middle and second moments: for a real ellipse, the shape itself. */
const equivalentEllipse = (ring: readonly Spot[]): [number, number][] => {
  const { area, cx, cy, xx, yy, xy } = moments(ring)
  const turn = Math.atan2(2 * xy, xx - yy) / 2
  const root = Math.hypot((xx - yy) / 2, xy)
  const ratio = Math.sqrt(((xx + yy) / 2 + root) / ((xx + yy) / 2 - root))
  const short = Math.sqrt(Math.abs(area) / (Math.PI * ratio))
  return Array.from({ length: 120 }, (_, i): [number, number] => {
    const angle = (2 * Math.PI * i) / 120
    const [u, v] = [short * ratio * Math.cos(angle), short * Math.sin(angle)]
    return [cx + u * Math.cos(turn) - v * Math.sin(turn), cy + u * Math.sin(turn) + v * Math.cos(turn)]
  })
}

const cross = (o: Spot, a: Spot, b: Spot): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])

/** Convex hull by the monotone chain (Andrew 1979). */
const hull = (ring: readonly Spot[]): [number, number][] => {
  const sorted = ring.map(([x, y]): [number, number] => [x, y]).sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (spots: readonly [number, number][]): [number, number][] => {
    const kept: [number, number][] = []
    for (const spot of spots) {
      for (let [o, a] = kept.slice(-2); o && a && cross(o, a, spot) <= 0; [o, a] = kept.slice(-2)) kept.pop()
      kept.push(spot)
    }
    return kept.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}

test('the files in examples are what the generator makes', () => {
  for (const [name, text] of Object.entries(demoFiles())) expect(example(name), name).toBe(text)
})

describe('the demo course', () => {
  test('is whole: nothing in it is assumed, 18 holes and a practice green, a crew of six', () => {
    expect(assumed).toEqual([])
    expect(course.greens).toHaveLength(19)
    expect(course.greens.map(({ hole }) => hole)).toEqual([
      ...Array.from({ length: 18 }, (_, i) => i + 1),
      null,
    ])
    expect(course.people).toHaveLength(6)
    expect(course.greens.filter(({ weak }) => weak).map(({ shade }) => shade)).toEqual([
      'dense',
      'dense',
      'dense',
    ])
    expect(course.now).toBe('2026-08-09T19:00:00+01:00')
  })

  test('has one corer, two scarifiers and mowers, and a dresser with a 0.9 t hopper', () => {
    const count = (kind: string): number => course.machines.filter((machine) => machine.kind === kind).length
    expect(
      ['corer', 'scarifier', 'collector', 'brush', 'mower', 'dresser', 'dragMat', 'roller'].map(count),
    ).toEqual([1, 2, 1, 1, 2, 1, 1, 1])
    expect(course.machines.find(({ kind }) => kind === 'dresser')?.hopperT).toBe(0.9)
  })

  test('every operation has two people or more who know it', () => {
    for (const operation of OPERATIONS.filter((name) => name !== 'feed' && name !== 'seed'))
      expect(
        course.people.filter(({ skills }) => skills.includes(operation)).length,
        operation,
      ).toBeGreaterThanOrEqual(2)
  })
})

describe('the demo greens', () => {
  test('have 24 to 48 points and 300 to 700 m2, by the polygon library', () => {
    for (const { id, ring } of outlines) {
      expect(ring.length, id).toBeGreaterThanOrEqual(24)
      expect(ring.length, id).toBeLessThanOrEqual(48)
      const areaM2 = areaOf(polygonClipping.union([ring]))
      expect(areaM2, id).toBeGreaterThan(300)
      expect(areaM2, id).toBeLessThan(700)
      expect(course.greens.find((green) => green.id === id)?.areaM2, id).toBeCloseTo(areaM2, 0)
    }
  })

  test('are no ellipses: each differs from its equivalent ellipse by at least a twentieth of its area', () => {
    for (const { id, ring } of outlines) {
      const differing = areaOf(polygonClipping.xor([ring], [equivalentEllipse(ring)]))
      expect(differing / areaOf([[ring]]), id).toBeGreaterThan(0.05)
    }
  })

  test('are concave, many of them: the hull is over a fiftieth larger on ten, over a twentieth on four', () => {
    const larger = outlines.map(({ ring }) => areaOf([[hull(ring)]]) / areaOf([[ring]]))
    expect(larger.filter((ratio) => ratio > 1.02).length).toBeGreaterThanOrEqual(10)
    expect(larger.filter((ratio) => ratio > 1.05).length).toBeGreaterThanOrEqual(4)
  })

  test('overlap nothing: no other green, no tee, no bunker, no wood, no water', () => {
    const shapes = [
      ...outlines,
      ...course.places
        .filter(({ kind }) => kind !== 'boundary')
        .flatMap(({ id, outline }) =>
          outline?.[0] ? [{ id, ring: outline[0].slice(0, -1).map(local) }] : [],
        ),
    ]
    for (const [i, a] of shapes.entries())
      for (const b of shapes.slice(0, i))
        expect(polygonClipping.intersection([a.ring], [b.ring]), `${a.id} and ${b.id}`).toEqual([])
  })

  test('lie inside the boundary, in a course of about 1.3 by 0.9 km', () => {
    const boundary = course.places.find(({ kind }) => kind === 'boundary')?.outline?.[0]?.map(local) ?? []
    for (const { id, ring } of outlines)
      expect(polygonClipping.difference([ring], [boundary]), id).toEqual([])
    const [xs, ys] = [boundary.map(([x]) => x), boundary.map(([, y]) => y)]
    expect(Math.max(...xs) - Math.min(...xs)).toBeLessThan(1400)
    expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(1000)
  })

  test('make a course one can walk: holes 120 to 500 m, each tee within 100 m of the green before, both loops by the shed', () => {
    const green = (hole: number): Spot => local(course.greens[hole - 1]?.at ?? [0, 0])
    const tee = (hole: number): Spot => HOLES[hole - 1]?.tee ?? [0, 0]
    for (let hole = 1; hole <= 18; hole++) {
      const lengthM = apartM(tee(hole), green(hole))
      expect(lengthM, `hole ${hole}`).toBeGreaterThan(120)
      expect(lengthM, `hole ${hole}`).toBeLessThan(500)
      if (hole !== 1 && hole !== 10)
        expect(apartM(green(hole - 1), tee(hole)), `to tee ${hole}`).toBeLessThan(100)
    }
    const shed = local(course.places.find(({ kind }) => kind === 'shed')?.at ?? [0, 0])
    for (const spot of [tee(1), green(9), tee(10), green(18)]) expect(apartM(spot, shed)).toBeLessThan(200)
  })
})

describe('the demo week', () => {
  const file = JSON.parse(example('demo-forecast.json')) as {
    hourly: { time: string[]; [column: string]: (number | string)[] }
  }
  const at = (column: string, time: string): number =>
    Number(file.hourly[column]?.[file.hourly.time.indexOf(time)])

  test('is read as eight days of hours with no gap', () => {
    const read = readForecastText(example('demo-forecast.json'))
    expect(read.ok && read.value.weather.hours).toBeGreaterThanOrEqual(190)
    expect(file.hourly.time[0]).toBe('2026-08-10T00:00')
    expect(new Set(Object.values(file.hourly).map((column) => column.length))).toEqual(new Set([192]))
  })

  test('has its first rain on the second day from 15:00, then three dry days', () => {
    const wet = file.hourly.time.filter((_, i) => Number(file.hourly['precipitation']?.[i]) > 0)
    // The value told at 16:00 covers 15:00 to 16:00.
    expect(wet[0]).toBe('2026-08-11T16:00')
    expect(wet.filter((time) => /-1[2-5]T/u.test(time))).toEqual([])
  })

  test('is coherent: humidity follows from temperature and dew point, gusts top the wind, no sun at night', () => {
    // Saturation vapour pressure by Alduchov and Eskridge (1996), equation 21: another formula than the generator's; they agree within 1 %.
    const pressure = (c: number): number => 6.1094 * Math.exp((17.625 * c) / (243.04 + c))
    for (const time of file.hourly.time) {
      const humidity = (100 * pressure(at('dew_point_2m', time))) / pressure(at('temperature_2m', time))
      expect(Math.abs(humidity - at('relative_humidity_2m', time)), time).toBeLessThan(1.6)
      expect(at('wind_gusts_10m', time), time).toBeGreaterThan(at('wind_speed_10m', time))
      if (/T0[0-4]|T2[23]/u.test(time)) expect(at('shortwave_radiation', time), time).toBe(0)
      if (/T1[2-4]/u.test(time)) expect(at('shortwave_radiation', time), time).toBeGreaterThan(150)
    }
  })
})

describe('the demo prescription', () => {
  const read = readPrescription(example('demo-prescription.json'))
  if (!read.ok) throw new Error(JSON.stringify(read.error))

  test('treats the three weak greens gently and all others by the usual chain', () => {
    const [gentle, usual] = read.value.groups
    expect(gentle?.greens).toEqual(course.greens.filter(({ weak }) => weak).map(({ id }) => id))
    expect(gentle?.chain.some(({ operation }) => operation === 'scarify')).toBe(false)
    expect(usual?.chain.map(({ operation, passes }) => `${operation} ${passes}`)).toEqual([
      'core 1',
      'scarify 2',
      'collect 1',
      'brushIn 1',
      'blow 1',
      'cut 2',
      'dress 1',
      'dragIn 2',
      'roll 1',
    ])
  })

  test('opens, clears, dresses and finishes each green, in that order', () => {
    for (const { chain } of read.value.groups)
      expect(chain.flatMap(({ effects }) => effects)).toEqual(['opens', 'clears', 'dresses', 'finishes'])
  })
})
