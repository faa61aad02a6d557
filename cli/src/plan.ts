import { toJsonSchema } from '@valibot/to-json-schema'
import {
  checkPlanAgainst,
  courseHash,
  factsFileSchema,
  makePlan,
  planSchema,
  type Course,
  type PlanToCheck,
  type Violation,
} from '@swardwright/engine'
import {
  planErrorWords,
  planNames,
  planSummary,
  unplannedSentence,
  violationSentence,
} from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { DEMO_COURSE, openCourse, openForecast, openPlan } from './files.ts'
import { readOptions } from './options.ts'
import { checkAt, REPLAN_COMMANDS } from './plan-replan.ts'
import { openPlanInput, PLAN_OPTIONS, PLAN_USAGE, withAssumed } from './plan-input.ts'

const make = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(argv, { ...PLAN_OPTIONS, json: 'flag' })
  const { input, course, assumed } = await openPlanInput(io, options)
  const made = makePlan(input)
  if (!made.ok) throw new BadInput(planErrorWords(made.error))
  const plan = withAssumed(made.value, assumed)
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
  const known = { course: 'text', forecast: 'text', facts: 'text', now: 'text', json: 'flag' } as const
  const { options, words } = readOptions(argv, known, { least: 1, most: 1, names: 'one plan FILE' })
  const plan = await openPlan(io, words[0] ?? '')
  const course = await courseFor(io, plan, options.course)
  if (courseHash(course) !== plan.course.hash)
    io.err('the course has changed since this plan was made; judged on the course as it is now')
  const isReplanned = options.now !== undefined || options.facts !== undefined
  const violations = isReplanned
    ? await checkAt(io, plan, course, options)
    : await checkAnew(io, plan, course, options.forecast)
  report(io, violations, { course, plan }, options.json === true)
  return violations.length === 0 ? 0 : 1
}

/** Judges a plan that nothing has come between yet. */
const checkAnew = async (
  io: Io,
  plan: PlanToCheck,
  course: Course,
  forecast: string | undefined,
): Promise<readonly Violation[]> => {
  const checked = checkPlanAgainst(plan, { course, weather: await openForecast(io, forecast) })
  if (!checked.ok) throw new BadInput(planErrorWords(checked.error))
  return checked.value
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
  const faults = violations.filter(({ asPinned }) => asPinned !== true)
  if (faults.length === 0) io.out('as pinned: nothing is broken but what the pins in this plan ask for')
  for (const violation of violations) {
    const sentence = violationSentence(violation, names)
    io.out(`${violation.rule}${violation.asPinned === true ? ' (as pinned)' : ''}: ${sentence}`)
  }
}

const schema = (argv: readonly string[], io: Io): Promise<number> => {
  const { words } = readOptions(argv, {}, { least: 0, most: 1, names: "nothing or 'facts'" })
  const [what = 'plan'] = words
  if (what !== 'plan' && what !== 'facts')
    throw new BadInput(`there is no schema '${what}'; it is 'plan' or 'facts'`)
  const wanted = what === 'facts' ? factsFileSchema : planSchema
  io.out(JSON.stringify(toJsonSchema(wanted, { errorMode: 'ignore' }), null, 2))
  return Promise.resolve(0)
}

/** All that is done with plans. */
export const PLAN_COMMANDS: readonly Command[] = [
  ...REPLAN_COMMANDS,
  {
    noun: 'plan',
    verb: 'make',
    usage: `${PLAN_USAGE} [--json]`,
    summary: 'plans a renovation: order of greens, posts, tasks, sand; exit 1 when a green is left out',
    run: make,
  },
  {
    noun: 'plan',
    verb: 'check',
    usage: 'FILE [--course F] [--forecast F] [--facts F --now TIME] [--json]',
    summary: 'judges a plan, also one written by hand or made again at --now; exit 1 with the broken rules',
    run: check,
  },
  {
    noun: 'plan',
    verb: 'schema',
    usage: '[facts]',
    summary: 'prints the JSON Schema of a plan, or of a file of facts',
    run: schema,
  },
]
