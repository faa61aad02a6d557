import { courseHash, usualPrescription, type Course, type MakePlanInput } from '@swardwright/engine'
import type { Io } from './command.ts'
import { openCourse, openForecast, openPrescription } from './files.ts'
import { required, wholeNumber } from './options.ts'

/** Options of every command that makes plans. */
export const PLAN_OPTIONS = {
  course: 'text',
  start: 'text',
  forecast: 'text',
  prescription: 'text',
  days: 'text',
  seed: 'text',
  schedules: 'text',
} as const

/** How the options of `PLAN_OPTIONS` read in a usage line. */
export const PLAN_USAGE =
  '--course FILE --start DATE [--forecast F] [--prescription F] [--days N] [--seed N] [--schedules N]'

/** What the options stand for, and what was taken for granted on the way. */
export type OpenedPlanInput = {
  readonly input: MakePlanInput
  readonly course: Course
  readonly assumed: readonly string[]
}

/** Opens what the options name. A course without a prescription gets the usual one, and `assumed` says so. */
export const openPlanInput = async (
  io: Io,
  options: { readonly [K in keyof typeof PLAN_OPTIONS]?: string },
): Promise<OpenedPlanInput> => {
  const { course, assumed } = await openCourse(io, required('course', options.course))
  const start = required('start', options.start)
  const weather = await openForecast(io, options.forecast)
  const prescription =
    options.prescription === undefined
      ? usualPrescription(course)
      : await openPrescription(io, options.prescription)
  const days = wholeNumber('days', options.days, { min: 1, max: 60 })
  const seed = wholeNumber('seed', options.seed, { min: 0, max: 2_147_483_647 })
  const schedules = wholeNumber('schedules', options.schedules, { min: 1, max: 1_000_000 })
  return {
    course,
    assumed: [...(options.prescription === undefined ? ['prescription-usual'] : []), ...assumed],
    input: {
      course,
      courseHash: courseHash(course),
      prescription,
      weather,
      start,
      ...(days === undefined ? {} : { days }),
      ...(seed === undefined ? {} : { seed }),
      ...(schedules === undefined ? {} : { schedules }),
    },
  }
}

/** The same plan, with what the opening of the files took for granted. */
export const withAssumed = <P extends { readonly assumed: readonly string[] }>(
  plan: P,
  assumed: readonly string[],
): P => ({
  ...plan,
  assumed: [...plan.assumed, ...assumed.filter((code) => !plan.assumed.includes(code))],
})
