import { expect, test } from 'vitest'
import type { Course, Green, Machine } from '../course/course.ts'
import { courseFromCount } from '../course/rough-course.ts'
import { lonLat, planeAt } from '../ground/plane.ts'
import { greenShape } from './green-shape.ts'
import { WEATHER_PORTS } from './make-plan.ts'
import { readProblem } from './read-problem.ts'
import { stepMinutes } from './step-minutes.ts'
import { usualPrescription } from './usual-prescription.ts'

const HOME = lonLat(-4.9, 53.7)
if (!HOME.ok) throw new Error('the place lies on the globe')
const plane = planeAt(HOME.value)

const rough = courseFromCount({ greens: 2, totalAreaM2: 1000 })
if (!rough.ok) throw new Error(rough.error.type)
const [plain, other] = rough.value.course.greens
if (plain === undefined || other === undefined) throw new Error('two greens were asked for')

const corner = (x: number, y: number): [number, number] => {
  const { lonDeg, latDeg } = plane.toLonLat({ x, y })
  return [lonDeg, latDeg]
}

/** 10 m by 50 m, 500 m2. */
const drawn: Green = {
  ...plain,
  areaM2: 500,
  at: corner(5, 25),
  outline: [[corner(0, 0), corner(10, 0), corner(10, 50), corner(0, 50), corner(0, 0)]],
}

const machine: Machine = {
  id: 'm',
  name: 'M',
  kind: 'roller',
  widthM: 1,
  overlapM: 0,
  speedMPerS: 1,
  turnS: 10,
  perGreenMin: 2,
  travelMPerS: 4,
  setUpMin: 0,
  crew: 1,
}
const step = { operation: 'roll', passes: 1, effects: [] } as const

test('a green with an outline gets its minutes from the runs over it', () => {
  // Along the 50 m: 10 runs and 9 turns of 10 s: (500 + 90) / 60 = 9.83 min, and 2 min on the green: 12 whole minutes.
  expect(stepMinutes(greenShape(drawn), machine, { ...step, effects: [] }, 1)).toBe(12)
})

test('a green of the same area without outline gets its minutes from an ellipse: more turns, so longer here', () => {
  const { outline: _outline, ...bare } = drawn
  // The ellipse of 500 m2, 1.3 times as long as wide: axes pi a b = 500, b = sqrt(500 / 1.3 pi) = 11.06 m. 23 strips, so 22 turns; runs are no
  // shorter than 500 m in all: (500 + 220) / 60 = 12 min at least. Runs reach past the edge by half a width or so at each end: 25 m at most.
  const minutes = stepMinutes(greenShape(bare), machine, { ...step, effects: [] }, 1)
  expect(minutes).toBeGreaterThanOrEqual(14)
  expect(minutes).toBeLessThanOrEqual(Math.ceil((500 + 25 + 220) / 60 + 2) + 1)
})

test('a plan says which greens were reckoned on an ellipse, and only those', () => {
  const course: Course = { ...rough.value.course, greens: [drawn, other] }
  const prescription = usualPrescription(course)
  const problem = readProblem(
    { course, prescription, weather: null, start: '2026-08-10', days: 2 },
    WEATHER_PORTS,
  )
  if (!problem.ok) throw new Error(problem.error.type)
  expect(problem.value.assumed).toContain(`outline-unknown:${other.id}`)
  expect(problem.value.assumed).not.toContain(`outline-unknown:${drawn.id}`)
})
