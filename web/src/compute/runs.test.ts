import {
  angleBetweenDeg,
  courseFromCount,
  lonLat,
  planeAt,
  usualPrescription,
  type Course,
  type Green,
} from '@swardwright/engine'
import { describe, expect, it } from 'vitest'
import { greenRuns } from './runs.ts'
import type { RunsAsk } from './runs-told.ts'

const place = lonLat(-4.9, 53.7)
if (!place.ok) throw new Error('the place lies on the globe')
const plane = planeAt(place.value)
const corner = (x: number, y: number): [number, number] => {
  const { lonDeg, latDeg } = plane.toLonLat({ x, y })
  return [lonDeg, latDeg]
}
const box = (west: number, east: number, south: number, north: number): [number, number][] => [
  corner(west, south),
  corner(east, south),
  corner(east, north),
  corner(west, north),
  corner(west, south),
]

const rough = courseFromCount({ greens: 1, totalAreaM2: 500 })
if (!rough.ok) throw new Error(rough.error.type)
const { course: plain } = rough.value

/** One green of 10 m by 50 m, long from south to north. */
const courseWith = (fields: Partial<Green> = {}, places: Course['places'] = []): Course => ({
  ...plain,
  greens: plain.greens.map((green) => ({
    ...green,
    id: 'g',
    areaM2: 500,
    at: corner(5, 25),
    outline: [box(0, 10, 0, 50)],
    ...fields,
  })),
  places: [...plain.places, ...places],
})

const told = (course: Course, ask: Partial<RunsAsk> = {}) => {
  const answer = greenRuns({
    course,
    prescription: usualPrescription(course),
    green: 'g',
    key: null,
    headingDeg: null,
    turnDeg: null,
    lastDeg: {},
    ...ask,
  })
  if (answer === null) throw new Error('the usual prescription has work for machines')
  return answer
}

const headingOf = (answer: ReturnType<typeof told>, pass = 0): number =>
  answer.told[pass]?.passes.headingDeg ?? Number.NaN

const keyOf = (course: Course, operation: string): string =>
  told(course).choices.find((choice) => choice.operation === operation)?.key ?? ''

describe('the runs of a green', () => {
  it('follow the length of a long green, and cover all of it', () => {
    const answer = told(courseWith())
    expect(angleBetweenDeg(headingOf(answer), 0)).toBeLessThan(0.1)
    expect(answer.told[0]?.areas.coveredM2).toBeCloseTo(500, 1)
    expect(answer).toMatchObject({ isApproximate: false, reason: { by: 'best', bestMin: null } })
  })

  it('are turned away from last time’s heading by 15 degrees at least', () => {
    const { operation } = told(courseWith()).choice
    const answer = told(courseWith(), { lastDeg: { [operation]: 2 } })
    expect(angleBetweenDeg(headingOf(answer), 2)).toBeGreaterThanOrEqual(15 - 1e-6)
    expect(answer.reason).toMatchObject({ lastDeg: 2, isNearLast: false, dropped: [] })
  })

  it('take a chosen heading as it is, and say what it costs and that it is last time’s', () => {
    const { operation } = told(courseWith()).choice
    const answer = told(courseWith(), { headingDeg: 90, lastDeg: { [operation]: 85 } })
    expect(headingOf(answer)).toBe(90)
    expect(answer.reason.isNearLast).toBe(true)
    expect(answer.told[0]?.passes.timeMin).toBeGreaterThan(answer.reason.bestMin ?? Infinity)
  })

  it('keep within the fall line where the slope is steep: 20 % felt at 10 % is 30 degrees off it', () => {
    const sloping = courseWith({ slope: { percent: 20, fallDeg: 90 } })
    const answer = told(sloping)
    expect(angleBetweenDeg(headingOf(answer), 90)).toBeLessThanOrEqual(30.01)
    expect(answer.told[0]?.acrossPercent).toBeNull()
    // Along the length the whole 20 % is felt sideways.
    expect(told(sloping, { headingDeg: 0 }).told[0]?.acrossPercent).toBeCloseTo(20, 9)
  })

  it('name the runs that leave towards a bunker', () => {
    const bunker = {
      id: 'b',
      name: 'Bunker',
      kind: 'bunker',
      at: corner(5, 53),
      outline: [box(0, 10, 52, 55)],
    } as const satisfies Course['places'][number]
    const answer = told(courseWith({}, [bunker]), { headingDeg: 0 })
    const runs = answer.told[0]?.passes.runs.length ?? 0
    expect(answer.told[0]?.towards).toEqual([
      { place: 'Bunker', runs: Array.from({ length: runs }, (_, k) => k + 1) },
    ])
    expect(told(courseWith({}, [bunker]), { headingDeg: 90 }).told[0]?.towards).toEqual([])
  })

  it('share the sand of the green over the loads', () => {
    const course = courseWith()
    const answer = told(course, { key: keyOf(course, 'dress') })
    const massKg = answer.sand?.loads.reduce((sum, load) => sum + load.massKg, 0)
    const lengthM = answer.told[0]?.passes.runLengthM ?? 0
    const { boutM = 0, rateKgPerM2 = 0 } = answer.sand ?? {}
    expect(massKg).toBeCloseTo(lengthM * boutM * rateKgPerM2, 6)
    expect(answer.sand?.loads[0]?.firstRun).toBe(0)
    expect(answer.sand?.loads.at(-1)?.lastRun).toBe((answer.told[0]?.passes.runs.length ?? 0) - 1)
  })

  it('are rough without an outline, and none where nothing is prescribed', () => {
    const bare = {
      ...courseWith(),
      greens: courseWith().greens.map(({ outline: _outline, ...green }) => green),
    }
    expect(told(bare).isApproximate).toBe(true)
    expect(
      greenRuns({
        course: courseWith(),
        prescription: usualPrescription(courseWith()),
        green: 'other',
        key: null,
        headingDeg: null,
        turnDeg: null,
        lastDeg: {},
      }),
    ).toBeNull()
  })
})
