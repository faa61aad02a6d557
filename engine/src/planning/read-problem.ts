import type { Course } from '../course/course.ts'
import { fail, ok, type Result } from '../result.ts'
import { MINUTE_MS, addDays, instantOf, isoWithOffset } from '../time/zone.ts'
import { DAY_MS, dayNumber } from '../time/calendar.ts'
import { sunDay, type SunEvent } from '../weather/daylight.ts'
import type { WeatherHours } from '../weather/hours.ts'
import { deriveOperations, type CourseWork, type WorkPorts } from './derive-operations.ts'
import type { GreenWork } from './green-work.ts'
import type { PlanError } from './plan-error.ts'
import { placesOf, travelMinutes, type Places } from './places.ts'
import type { Prescription } from './prescription.ts'
import type { Problem, ProblemDay, ProblemGreen } from './problem.ts'
import { minuteAt, readMachine, readPerson } from './read-crew.ts'
import { readStores } from './read-stores.ts'
import { readTineSets, uncountedTines } from './tine-sets.ts'
import type { ReadSky, Sky } from './sky.ts'

/** What a plan is made from. */
export type PlanInput = {
  readonly course: Course
  readonly prescription: Prescription
  /** Null: no forecast; every hour counts as dry, and the plan says so. */
  readonly weather: WeatherHours | null
  /** First day of work, 'YYYY-MM-DD' on the course's calendar. */
  readonly start: string
  /** Days of the horizon, 1 to 60. */
  readonly days: number
}

/** The replaceable parts of the reading. */
export type Ports = WorkPorts & { readonly sky: ReadSky }

/** Most days a plan looks ahead. */
export const MAX_DAYS = 60

/** Days of the horizon with light and dark; a polar day without sunset is light to its end. */
const readDays = (input: PlanInput, originMs: number): readonly ProblemDay[] => {
  const { course, start } = input
  const [longitudeDeg, latitudeDeg] = course.greens[0]?.at ?? [0, 0]
  const minute = (ms: number): number => Math.round((ms - originMs) / MINUTE_MS)
  return Array.from({ length: input.days }, (_, index): ProblemDay => {
    const date = addDays(start, index)
    const startMs = instantOf(date, 0, course.timeZone)
    const endMs = instantOf(addDays(date, 1), 0, course.timeZone)
    const noonOffsetMs = dayNumber(date) * DAY_MS + DAY_MS / 2 - instantOf(date, 720, course.timeZone)
    const sun = sunDay(dayNumber(date), latitudeDeg, longitudeDeg, noonOffsetMs)
    const day = { date, startMin: minute(startMs), endMin: minute(endMs) }
    const without = (event: SunEvent): number =>
      'because' in event && event.because === 'sunStaysUp' ? day.endMin : day.startMin
    const sunsetMin = sun.sunset.atMs === null ? without(sun.sunset) : minute(sun.sunset.atMs)
    const { darkFrom } = course.settings
    const darkMin = darkFrom === null ? sunsetMin : minuteAt(course, originMs, date, darkFrom)
    return {
      ...day,
      sunriseMin: sun.sunrise.atMs === null ? day.startMin : minute(sun.sunrise.atMs),
      darkMin: Math.min(day.endMin, darkMin),
    }
  })
}

const problemGreen = (input: PlanInput, originMs: number, place: number, work: GreenWork): ProblemGreen => ({
  id: work.green.id,
  place,
  weak: work.green.weak,
  steps: work.steps,
  sand: {
    kind: work.group.sand.kind,
    lowT: work.sand.bandT.low,
    likelyT: work.sand.bandT.likely,
    highT: work.sand.bandT.high,
    loads: work.steps.filter((step) => step.load !== null).length,
  },
  fixtures: input.course.fixtures
    .filter((fixture) => fixture.greens === 'all' || fixture.greens.includes(work.green.id))
    .map((fixture) => ({
      start: minuteAt(input.course, originMs, fixture.date, fixture.from),
      end: minuteAt(input.course, originMs, fixture.date, fixture.to),
    }))
    .sort((a, b) => a.start - b.start),
})

/** What had to be assumed, as codes that `present` words: `code` or `code:fact`. */
const assumptions = (
  input: PlanInput,
  sky: Sky,
  originMs: number,
  unknownSand: readonly string[],
  cutOff: readonly string[],
  uncounted: readonly string[],
): readonly string[] => [
  ...(input.weather === null ? ['no-forecast'] : []),
  ...(sky.forecastEndsMin === null || input.weather === null
    ? []
    : [`dry-after:${isoWithOffset(originMs + sky.forecastEndsMin * MINUTE_MS, input.course.timeZone)}`]),
  ...unknownSand.map((kind) => `sand-stock-unknown:${kind}`),
  ...uncounted.map((kind) => `tine-sets-unknown:${kind}`),
  ...(input.course.places.some((place) => place.kind === 'shed') ? [] : ['shed-unknown']),
  ...cutOff.map((place) => `cut-off:${place}`),
  ...input.course.greens
    .filter((green) => green.outline === undefined)
    .map((green) => `outline-unknown:${green.id}`),
]

/**
 * Reads course, prescription and weather into the problem that the solver and the checker share.
 * Errors: `PlanError`, when the input contradicts itself. Greens that can't be worked are not an error; they stand in `excluded`.
 */
export const readProblem = (input: PlanInput, ports: Ports): Result<Problem, PlanError> => {
  const wrong = wrongDays(input)
  if (wrong !== null) return fail(wrong)
  const ground = workGround(input.course, input.prescription, ports)
  return ground.ok ? problemOnGround(input, ports.sky, ground.value) : ground
}

/** What is alike whatever the days and the weather, and slow to reckon: the work on each green, and the ways between. */
export type WorkGround = CourseWork & { readonly places: Places }

/** Reckons it. Errors: `PlanError`, when the prescription contradicts the course or itself. */
export const workGround = (
  course: Course,
  prescription: Prescription,
  ports: WorkPorts,
): Result<WorkGround, PlanError> => {
  const read = deriveOperations(course, prescription, ports)
  if (!read.ok) return read
  const greens = read.value.works.map(({ green }) => green.id)
  return ok({ ...read.value, places: placesOf(course, greens) })
}

const wrongDays = ({ course, start, days }: PlanInput): PlanError | null => {
  if (!Number.isFinite(dayNumber(start))) return { type: 'badStart', received: start }
  if (!Number.isInteger(days) || days < 1 || days > MAX_DAYS)
    return { type: 'badDays', received: days, min: 1, max: MAX_DAYS }
  return course.people.length === 0 ? { type: 'noPeople' } : null
}

/** The same on ground that was reckoned before, for many days or skies of one course and prescription. Errors: `PlanError`. */
export const problemOnGround = (
  input: PlanInput,
  readSky: ReadSky,
  { works, excluded, places }: WorkGround,
): Result<Problem, PlanError> => {
  const wrong = wrongDays(input)
  if (wrong !== null) return fail(wrong)
  const { course } = input
  const originMs = instantOf(input.start, 0, course.timeZone)
  const days = readDays(input, originMs)
  const horizonMin = days.at(-1)?.endMin ?? 0
  const firstGreen = places.ids.length - works.length
  const sky = readSky({ course, weather: input.weather, originMs, days, horizonMin })
  if (!sky.ok) return fail({ type: 'threshold', error: sky.error })
  const kinds = new Set(works.filter((work) => work.sand.loads > 0).map((work) => work.group.sand.kind))
  const tines = readTineSets(course, originMs)
  const { stores, unknown } = readStores(course, originMs, places, kinds)
  return ok({
    originMs,
    timeZone: course.timeZone,
    days,
    horizonMin,
    places: places.ids,
    personTravelMin: travelMinutes(places, course.settings.personTravelMPerS),
    machines: course.machines.map((machine) => readMachine(machine, days, places)),
    people: course.people.map((person) => readPerson(course, person, originMs, days)),
    greens: works.map((work, index) => problemGreen(input, originMs, firstGreen + index, work)),
    excluded,
    stores,
    ...(tines === undefined ? {} : { tines }),
    rain: sky.value.rain,
    workable: sky.value.workable,
    driedMm: sky.value.driedMm,
    settings: course.settings,
    assumed: assumptions(input, sky.value, originMs, unknown, places.cutOff, uncountedTines(course, works)),
  })
}
