import {
  addDays,
  chooseWeeks,
  DEFAULT_WEEKS,
  drawnYears,
  firstDaysBetween,
  localOf,
  mondayAfter,
  readNormals,
  reckonWeeks,
  usualPrescription,
  usualYears,
  WEEKS_LIMITS,
  type Course,
  type PastWeather,
} from '@swardwright/engine'
import { weeksErrorWords, weeksSummary } from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { DEMO_COURSE, DEMO_NORMALS, DEMO_PRESCRIPTION, openCourse, openPrescription } from './files.ts'
import { calendarDay, readOptions, wholeNumber } from './options.ts'
import { openChecked, openHistory, PLACE_OPTIONS, stationOf, withNegatives } from './weather-files.ts'

const WEEKS_OPTIONS = {
  course: 'text',
  prescription: 'text',
  history: 'text',
  columns: 'text',
  normals: 'text',
  from: 'text',
  to: 'text',
  every: 'text',
  days: 'text',
  years: 'text',
  seed: 'text',
  schedules: 'text',
  json: 'flag',
  ...PLACE_OPTIONS,
} as const

type Options = {
  readonly [K in keyof typeof WEEKS_OPTIONS]?: (typeof WEEKS_OPTIONS)[K] extends 'flag' ? boolean : string
}

const WEEK_DAYS = 7

/** The first Monday after a course's own today. */
const nextMonday = (course: Course): string => {
  if (course.now === null)
    throw new BadInput(`--from is missing, and ${course.name} has no 'now' to begin from; give --from DATE`)
  return mondayAfter(localOf(Date.parse(course.now), course.timeZone).date)
}

const firstDaysOf = (course: Course, options: Options): readonly string[] => {
  const everyDays =
    wholeNumber('every', options.every, { min: 1, max: WEEKS_LIMITS.days }) ?? DEFAULT_WEEKS.everyDays
  const from = options.from === undefined ? nextMonday(course) : calendarDay('from', options.from)
  const to =
    options.to === undefined
      ? addDays(from, (DEFAULT_WEEKS.weeks - 1) * WEEK_DAYS)
      : calendarDay('to', options.to)
  if (to < from) throw new BadInput(`--to is ${to}; it must be ${from}, the first day, or later`)
  return firstDaysBetween(from, to, everyDays)
}

/** The record given, else years drawn from the normals given, else from the usual normals of the place. */
const pastOf = async (
  io: Io,
  course: Course,
  options: Options,
  draw: { readonly years: number; readonly seed: number },
): Promise<PastWeather> => {
  if (options.history !== undefined && options.normals !== undefined)
    throw new BadInput('give one of --normals F and --history F')
  if (options.history !== undefined) {
    const { history, layout } = await openHistory(io, options.history, options.columns)
    const station = stationOf(options.history, layout, options)
    return { record: history.record, station, source: 'record' }
  }
  const path = options.normals ?? (options.course === undefined ? DEMO_NORMALS : undefined)
  return path === undefined
    ? usualYears(course, draw.years, draw.seed)
    : drawnYears(await openChecked(io, path, readNormals), draw.years, draw.seed)
}

const prescriptionOf = (io: Io, course: Course, options: Options) => {
  const path = options.prescription ?? (options.course === undefined ? DEMO_PRESCRIPTION : undefined)
  return path === undefined ? usualPrescription(course) : openPrescription(io, path)
}

const weeks = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(withNegatives(argv), WEEKS_OPTIONS)
  const { course } = await openCourse(io, options.course ?? DEMO_COURSE)
  const years =
    wholeNumber('years', options.years, { min: 1, max: WEEKS_LIMITS.years }) ?? DEFAULT_WEEKS.years
  const seed = wholeNumber('seed', options.seed, { min: 0, max: 2_147_483_647 }) ?? DEFAULT_WEEKS.seed
  const made = reckonWeeks({
    course,
    prescription: await prescriptionOf(io, course, options),
    past: await pastOf(io, course, options, { years, seed }),
    firstDays: firstDaysOf(course, options),
    days: wholeNumber('days', options.days, { min: 1, max: WEEKS_LIMITS.days }) ?? DEFAULT_WEEKS.days,
    years,
    seed,
    schedules:
      wholeNumber('schedules', options.schedules, { min: 1, max: 10_000 }) ?? DEFAULT_WEEKS.schedules,
  })
  if (!made.ok) throw new BadInput(weeksErrorWords(made.error))
  if (options.json === true) {
    const { ranked, picks } = chooseWeeks(made.value.weeks)
    const named = (list: typeof ranked) =>
      list.map(({ week, reserve }) => ({ firstDay: week.firstDay, reserve }))
    io.out(JSON.stringify({ ...made.value, ranked: named(ranked), picks: named(picks) }))
  } else io.out(weeksSummary(made.value, course))
  return made.value.weeks.some(({ clearYears }) => clearYears > 0) ? 0 : 1
}

/** Months ahead: which week to take. */
export const PLAN_WEEKS_COMMANDS: readonly Command[] = [
  {
    noun: 'plan',
    verb: 'weeks',
    usage:
      '[--course F] [--prescription F] [--history F [--columns MAP.json] [--latitude D --longitude D --altitude M] | --normals F] [--from DATE --to DATE] [--every DAYS] [--days N] [--years K] [--seed N] [--schedules N] [--json]',
    summary:
      'weighs the weeks to renovate in by past years: finished in time, clashes, when good again, a reserve; exit 1 when no week is clear in any year',
    run: weeks,
  },
]
