import { toJsonSchema } from '@valibot/to-json-schema'
import {
  checkPlanAgainst,
  courseHash,
  makePlan,
  planSchema,
  type Course,
  type Plan,
  type PlanToCheck,
  type Violation,
  usualPrescription,
} from '@swardwright/engine'
import {
  planErrorWords,
  planNames,
  planSummary,
  unplannedSentence,
  violationSentence,
} from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { DEMO_COURSE, openCourse, openForecast, openPlan, openPrescription } from './files.ts'
import { readOptions, required, wholeNumber } from './options.ts'

const MAKE_OPTIONS = {
  course: 'text',
  start: 'text',
  forecast: 'text',
  prescription: 'text',
  days: 'text',
  seed: 'text',
  schedules: 'text',
  json: 'flag',
} as const

const make = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(argv, MAKE_OPTIONS)
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
  const made = makePlan({
    course,
    courseHash: courseHash(course),
    prescription,
    weather,
    start,
    ...(days === undefined ? {} : { days }),
    ...(seed === undefined ? {} : { seed }),
    ...(schedules === undefined ? {} : { schedules }),
  })
  if (!made.ok) throw new BadInput(planErrorWords(made.error))
  const plan: Plan = {
    ...made.value,
    assumed: [
      ...made.value.assumed,
      ...(options.prescription === undefined ? ['prescription-usual'] : []),
      ...assumed.filter((code) => !made.value.assumed.includes(code)),
    ],
  }
  if (options.json === true) io.out(JSON.stringify(plan))
  else io.out(planSummary(plan, course, (entry) => unplannedSentence(entry, planNames(course, plan))))
  return plan.unplanned.length === 0 ? 0 : 1
}

/** The course that a plan is judged on: the file given; without one the demo course, if the plan is for that. */
const courseFor = async (io: Io, plan: PlanToCheck, path: string | undefined): Promise<Course> => {
  if (path !== undefined) return (await openCourse(io, path)).course
  const { course } = await openCourse(io, DEMO_COURSE)
  if (course.id === plan.course.id) return course
  throw new BadInput(`the plan is for course '${plan.course.id}'; name its file with --course`)
}

const check = async (argv: readonly string[], io: Io): Promise<number> => {
  const known = { course: 'text', forecast: 'text', json: 'flag' } as const
  const { options, words } = readOptions(argv, known, { least: 1, most: 1, names: 'one plan FILE' })
  const plan = await openPlan(io, words[0] ?? '')
  const course = await courseFor(io, plan, options.course)
  if (courseHash(course) !== plan.course.hash)
    io.err('the course has changed since this plan was made; judged on the course as it is now')
  const checked = checkPlanAgainst(plan, { course, weather: await openForecast(io, options.forecast) })
  if (!checked.ok) throw new BadInput(planErrorWords(checked.error))
  report(io, checked.value, { course, plan }, options.json === true)
  return checked.value.length === 0 ? 0 : 1
}

const report = (
  io: Io,
  violations: readonly Violation[],
  { course, plan }: { readonly course: Course; readonly plan: PlanToCheck },
  json: boolean,
): void => {
  if (json) return io.out(JSON.stringify(violations))
  if (violations.length === 0) return io.out('clean')
  const names = planNames(course, plan)
  for (const violation of violations) io.out(`${violation.rule}: ${violationSentence(violation, names)}`)
}

const schema = (_argv: readonly string[], io: Io): Promise<number> => {
  io.out(JSON.stringify(toJsonSchema(planSchema, { errorMode: 'ignore' }), null, 2))
  return Promise.resolve(0)
}

/** All that is done with plans. */
export const PLAN_COMMANDS: readonly Command[] = [
  {
    noun: 'plan',
    verb: 'make',
    usage:
      '--course FILE --start DATE [--forecast F] [--prescription F] [--days N] [--seed N] [--schedules N] [--json]',
    summary: 'plans a renovation: order of greens, posts, tasks, sand; exit 1 when a green is left out',
    run: make,
  },
  {
    noun: 'plan',
    verb: 'check',
    usage: 'FILE [--course F] [--forecast F] [--json]',
    summary: 'judges a plan, also one written by hand; exit 1 with the broken rules',
    run: check,
  },
  { noun: 'plan', verb: 'schema', usage: '', summary: "prints the plan's JSON Schema", run: schema },
]
