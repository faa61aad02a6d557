import { randomCourse, readProblem, WEATHER_PORTS, type Problem } from '@swardwright/engine'
import { openDemo } from './demo.ts'

/** A week of the bench: its problem, read from a course, a prescription and a sky. */
export type Week = { readonly name: string; readonly problem: Problem }

/** Days that a plan may take: enough for the slowest of the generated crews, and no more than a small week needs, so that the general engine has less to look at. */
const DAYS = 14
const SMALL_DAYS = 4
const SMALL_GREENS = 6

/** Minutes that sand lies before it is dragged in, in a bare week. */
const BARE_DRY_MIN = 60

const read = (name: string, input: Parameters<typeof readProblem>[0]): Week => {
  const problem = readProblem(input, WEATHER_PORTS)
  if (!problem.ok) throw new Error(`${name} does not read: ${problem.error.type}`)
  return { name, problem: problem.value }
}

/** The demo as the app opens it. */
export const demoWeek = (): Week => read('demo', { ...openDemo(), days: 7 })

/** Generated courses of one size, always the same ones: sand enough, showers as they come; small weeks are dry, so that they can be proven. */
export const weeksOf = (greens: number, courses: number): readonly Week[] => {
  const small = greens <= SMALL_GREENS
  const days = small ? SMALL_DAYS : DAYS
  return Array.from({ length: courses }, (_, index) => {
    const wish = { seed: 1000 * greens + index, greens, days, sand: 'enough' } as const
    return read(`${greens}-${index + 1}`, {
      ...randomCourse({ ...wish, weather: small ? 'dry' : 'mixed' }),
      days,
    })
  })
}

/**
 * The same week bare of what a general engine cannot be told whole: all places in one, no set-up, no filling time, and sand that dries in a fixed time.
 * Machines, crews and their skills, shifts, breaks, calendars, rain, the cap and the first-green check stay, so both engines solve the very same problem.
 */
export const bareWeek = ({ name, problem }: Week): Week => ({
  name: `${name}-bare`,
  problem: {
    ...problem,
    places: ['shed'],
    personTravelMin: new Int32Array(1),
    machines: problem.machines.map((machine) => ({
      ...machine,
      setUpMin: 0,
      loadMin: 0,
      travelMin: new Int32Array(1),
    })),
    greens: problem.greens.map((green) => ({
      ...green,
      place: 0,
      steps: green.steps.map((step) => ({
        ...step,
        lagMin: step.dryNeedMm > 0 ? Math.max(step.lagMin, BARE_DRY_MIN) : step.lagMin,
        dryNeedMm: 0,
      })),
    })),
    stores: problem.stores.map((store) => ({ ...store, place: 0 })),
  },
})
