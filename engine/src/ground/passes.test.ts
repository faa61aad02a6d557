import polygonClipping from 'polygon-clipping'
import { describe, expect, test } from 'vitest'
import { checkedPolygon } from './checked-polygon.ts'
import { coverageOf } from './coverage.ts'
import { circle, ellipse, kidney, lShape, moved, rectangle, withIsland } from './fixtures/outlines.ts'
import { planPasses, type Passes } from './passes.ts'
import { checkedPassSettings, type PassSettings } from './pass-settings.ts'
import { distanceM, isOnGreen, polygonAreaM2, type Polygon } from './polygon.ts'

const settings: PassSettings = {
  widthM: 1.2,
  overlapM: 0,
  speedMPerS: 1,
  turnS: 10,
  turnRadiusM: 0,
  turnStyle: 'lift',
  laps: 0,
  order: 'backAndForth',
}

const SHAPES: readonly (readonly [string, Polygon])[] = [
  ['circle', circle(12)],
  ['rectangle', rectangle(17, 29)],
  ['ellipse', ellipse(9, 14)],
  ['kidney', kidney()],
  ['L', lShape()],
]

/** Counts, on a grid of 10 cm, how many swaths lie over each point of the green. A check that knows nothing of clipping. */
const raster = (polygon: Polygon, passes: Passes, widthM: number) => {
  const cellM = 0.1
  const xs = polygon.outer.map((p) => p.x)
  const ys = polygon.outer.map((p) => p.y)
  let [cells, covered, twice] = [0, 0, 0]
  for (let x = Math.min(...xs) + cellM / 2; x < Math.max(...xs); x += cellM)
    for (let y = Math.min(...ys) + cellM / 2; y < Math.max(...ys); y += cellM) {
      if (!isOnGreen({ x, y }, polygon)) continue
      const over = passes.runs.filter(({ from, to, lengthM }) => {
        const along = ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / lengthM
        const across = ((x - from.x) * (to.y - from.y) - (y - from.y) * (to.x - from.x)) / lengthM
        return along >= 0 && along <= lengthM && Math.abs(across) <= widthM / 2
      }).length
      cells += 1
      if (over > 0) covered += 1
      if (over > 1) twice += 1
    }
  const cellM2 = cellM * cellM
  return { areaM2: cells * cellM2, coveredM2: covered * cellM2, coveredTwiceM2: twice * cellM2 }
}

/** Covered area by a second, independent clipping library. */
const coveredByOtherLibraryM2 = (polygon: Polygon, passes: Passes, widthM: number): number => {
  const swaths = passes.runs.map(({ from, to, lengthM }): [number, number][][] => {
    const x = ((to.y - from.y) * widthM) / 2 / lengthM
    const y = ((from.x - to.x) * widthM) / 2 / lengthM
    return [
      [
        [from.x - x, from.y - y],
        [from.x + x, from.y + y],
        [to.x + x, to.y + y],
        [to.x - x, to.y - y],
      ],
    ]
  })
  const green = [polygon.outer, ...polygon.holes].map((ring) => ring.map((p): [number, number] => [p.x, p.y]))
  const [first, ...others] = swaths
  if (first === undefined) return 0
  const cut = polygonClipping.intersection([green], polygonClipping.union(first, ...others))
  const ringM2 = (ring: readonly (readonly [number, number])[]) =>
    Math.abs(
      ring.reduce((sum, [x, y], k) => sum + x * (ring[k + 1]?.[1] ?? y) - (ring[k + 1]?.[0] ?? x) * y, 0),
    ) / 2
  return cut.reduce(
    (sum, [outer = [], ...holes]) => sum + ringM2(outer) - holes.reduce((a, h) => a + ringM2(h), 0),
    0,
  )
}

describe('run count and length against closed forms', () => {
  test('rectangle 17 x 29 m, north: ceil(17 / 1.2) = 15 runs of 29 m', () => {
    const passes = planPasses(rectangle(17, 29), settings, 0)
    expect(passes.runs).toHaveLength(15)
    expect(passes.runLengthM).toBeCloseTo(15 * 29, 6)
    expect(passes.turns).toBe(14)
    // Turning on the spot, each turn is the step of 1.2 m: 14 x 1.2.
    expect(passes.turnLengthM).toBeCloseTo(16.8, 6)
    expect(passes.timeMin).toBeCloseTo((435 + 140) / 60, 9)
    expect(passes.runMin + passes.turnMin).toBeCloseTo(passes.timeMin, 12)
  })

  test('overlap of 0.2 m: ceil((17 - 0.2) / 1.0) = 17 runs', () => {
    expect(planPasses(rectangle(17, 29), { ...settings, overlapM: 0.2 }, 0).runs).toHaveLength(17)
  })

  test('circle of radius 12 m at 1.2 m: 20 runs, each the longest chord in its strip', () => {
    // Strip k spans from 1.2 k to 1.2 (k + 1) off the middle; its longest chord lies on the nearer side: 2 sqrt(144 - (1.2 k)^2).
    const halfM = Array.from({ length: 10 }, (_, k) => 2 * Math.sqrt(144 - (1.2 * k) ** 2)).reduce(
      (a, b) => a + b,
    )
    const passes = planPasses(circle(12), settings, 40)
    expect(passes.runs).toHaveLength(20)
    expect(Math.abs(passes.runLengthM / (2 * halfM) - 1)).toBeLessThan(0.005)
  })

  test('ellipse 9 x 14 m, north: 15 runs', () => {
    // Half-chord at x is 14 sqrt(1 - (x / 9)^2); 18 / 1.2 = 15 strips, the middle one over the centre.
    const nearM = Array.from({ length: 15 }, (_, k) => Math.max(0, Math.abs(-9 + 1.2 * (k + 0.5)) - 0.6))
    const lengthM = nearM.reduce((sum, x) => sum + 28 * Math.sqrt(1 - (x / 9) ** 2), 0)
    const passes = planPasses(ellipse(9, 14), settings, 0)
    expect(passes.runs).toHaveLength(15)
    expect(Math.abs(passes.runLengthM / lengthM - 1)).toBeLessThan(0.005)
  })

  test('L, north at 1 m: ten runs of 30 m and ten of 12 m; east: 12 of 20 m and 18 of 10 m', () => {
    expect(planPasses(lShape(), { ...settings, widthM: 1 }, 0).runLengthM).toBeCloseTo(420, 6)
    const east = planPasses(lShape(), { ...settings, widthM: 1 }, 90)
    expect(east.runs).toHaveLength(30)
    expect(east.runLengthM).toBeCloseTo(420, 6)
  })
})

describe.each(SHAPES)('coverage of the %s', (name, polygon) => {
  test.each([
    [1.2, 0, 0],
    [1.2, 0.15, 63],
    [0.5, 0.02, 110],
  ])(
    '%s m wide, overlap %s m, heading %s: agrees with a fine raster and a second library',
    (widthM, overlapM, heading) => {
      const wished = { ...settings, widthM, overlapM }
      const passes = planPasses(polygon, wished, heading)
      const areas = coverageOf(polygon, wished, passes)
      const counted = raster(polygon, passes, widthM)
      const areaM2 = polygonAreaM2(polygon)
      expect(areas.missedM2 / areaM2, name).toBeLessThan(0.001)
      expect(Math.abs(areas.coveredM2 - counted.coveredM2) / areaM2).toBeLessThan(0.005)
      expect(Math.abs(areas.coveredTwiceM2 - counted.coveredTwiceM2) / areaM2).toBeLessThan(0.005)
      expect(Math.abs(areas.coveredM2 - coveredByOtherLibraryM2(polygon, passes, widthM))).toBeLessThan(
        areaM2 * 1e-4,
      )
    },
  )
})

describe('islands', () => {
  test('no run passes over an island, and what is missed lies beside it', () => {
    const polygon = withIsland(3)
    const passes = planPasses(polygon, settings, 25)
    const areas = coverageOf(polygon, settings, passes)
    const counted = raster(polygon, passes, 1.2)
    expect(Math.abs(areas.missedM2 - (counted.areaM2 - counted.coveredM2))).toBeLessThan(
      0.005 * counted.areaM2,
    )
    // The strips that meet a square of 3 m turned by 25 degrees span at most 4.08 + 2 x 1.2 m across, 4.08 m along.
    expect(areas.missedM2).toBeLessThan(4.08 * 6.48 - 9)
    for (const run of passes.runs) {
      const middle = { x: (run.from.x + run.to.x) / 2, y: (run.from.y + run.to.y) / 2 }
      expect(isOnGreen(middle, polygon)).toBe(true)
    }
  })

  test('one lap round edge and island takes most of what was missed', () => {
    const polygon = withIsland(3)
    const checked = checkedPolygon(polygon)
    if (!checked.ok) throw new Error('sound')
    const missed = [0, 1].map((laps) => {
      const wished = { ...settings, laps }
      return coverageOf(checked.value, wished, planPasses(checked.value, wished, 25)).missedM2
    })
    expect(missed[1]).toBeLessThan((missed[0] ?? 0) / 4)
  })
})

describe('laps', () => {
  test('two laps round a circle run at 0.6 and 1.8 m from its edge, then the straight runs cover radius 9.6', () => {
    const passes = planPasses(circle(12), { ...settings, laps: 2 }, 0)
    const laps = passes.runs.filter((run) => run.kind === 'lap')
    expect(laps.map((lap) => lap.lengthM)[0]).toBeCloseTo(2 * Math.PI * 11.4, 1)
    expect(laps.map((lap) => lap.lengthM)[1]).toBeCloseTo(2 * Math.PI * 10.2, 1)
    expect(passes.runs).toHaveLength(2 + 16)
    expect(coverageOf(circle(12), { ...settings, laps: 2 }, passes).missedM2).toBeLessThan(0.001 * 452)
  })

  test('laps that eat the whole green leave no straight runs', () => {
    const passes = planPasses(circle(3), { ...settings, laps: 3 }, 0)
    expect(passes.runs.every((run) => run.kind === 'lap')).toBe(true)
  })
})

describe('the same green elsewhere', () => {
  test('turning green and heading together, moving it, or starting at another point changes nothing', () => {
    const base = planPasses(kidney(), settings, 20)
    const turned = planPasses(moved(kidney(), 57, 310, -120), settings, 77)
    const { outer } = kidney()
    const started = planPasses(
      { outer: [...outer.slice(50), ...outer.slice(0, 50)], holes: [] },
      settings,
      20,
    )
    for (const other of [turned, started]) {
      expect(other.runs).toHaveLength(base.runs.length)
      expect(other.runLengthM).toBeCloseTo(base.runLengthM, 6)
      expect(other.turnLengthM).toBeCloseTo(base.turnLengthM, 6)
    }
  })

  test('the outline given is never changed', () => {
    const polygon = withIsland(2)
    const before = JSON.stringify(polygon)
    for (const ring of [polygon.outer, ...polygon.holes]) Object.freeze(ring)
    const wished = { ...settings, laps: 1 }
    coverageOf(polygon, wished, planPasses(polygon, wished, 12))
    expect(JSON.stringify(polygon)).toBe(before)
  })
})

test('back and forth, each run starts at the side where the last one ended', () => {
  const passes = planPasses(rectangle(17, 29), settings, 0)
  passes.runs.slice(1).forEach((run, k) => {
    const before = passes.runs[k]
    if (before !== undefined) expect(distanceM(before.to, run.from)).toBeCloseTo(1.2, 6)
  })
})

test('figures out of range are refused with field, unit and range', () => {
  expect(checkedPassSettings({ ...settings, overlapM: 1.19 })).toMatchObject({
    ok: false,
    error: { field: 'overlapM', unit: 'm', min: 0 },
  })
  expect(checkedPassSettings({ ...settings, laps: 1.5 })).toMatchObject({
    ok: false,
    error: { field: 'laps' },
  })
  expect(checkedPassSettings({ ...settings, widthM: Number.NaN })).toMatchObject({
    error: { field: 'widthM' },
  })
  expect(checkedPassSettings(settings).ok).toBe(true)
})
