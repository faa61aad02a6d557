import {
  bailOut,
  checkPlanAt,
  courseHash,
  planProblemOf,
  readFacts,
  replan,
  type Course,
  type DayFact,
  type PlanToCheck,
  type ReplanInput,
  type Violation,
  type WeatherHours,
} from '@swardwright/engine'
import {
  bailOutSummary,
  courseErrorSentence,
  planErrorWords,
  replanSummary,
  situationErrorWords,
} from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { openCourse, openForecast, openPlan } from './files.ts'
import { instantIn } from './instant-option.ts'
import { readOptions, required, wholeNumber } from './options.ts'

const OPTIONS = { course: 'text', facts: 'text', now: 'text', forecast: 'text', json: 'flag' } as const

type Options = {
  readonly course?: string
  readonly facts?: string
  readonly now?: string
  readonly forecast?: string
}

/** A file of facts; none where none is given. */
const openFacts = async (io: Io, path: string | undefined): Promise<readonly DayFact[]> => {
  if (path === undefined) return []
  const read = readFacts(await io.readFile(path))
  if (read.ok) return read.value.facts
  throw new BadInput(`${path}: ${courseErrorSentence(read.error)}`)
}

const problemFor = (
  plan: PlanToCheck,
  course: Course,
  weather: WeatherHours | null,
): ReplanInput['problem'] => {
  const read = planProblemOf(plan, course, weather)
  if (read.ok) return read.value
  throw new BadInput(planErrorWords(read.error))
}

/** Everything that a plan is made again from, out of the options. */
const openReplan = async (io: Io, path: string, options: Options): Promise<ReplanInput> => {
  const plan = await openPlan(io, path)
  const { course } = await openCourse(io, required('course', options.course))
  const weather = await openForecast(io, options.forecast)
  if (courseHash(course) !== plan.course.hash)
    io.err('the course has changed since this plan was made; made again on the course as it is now')
  return {
    course,
    weather,
    plan,
    problem: problemFor(plan, course, weather),
    facts: await openFacts(io, options.facts),
    now: instantIn('now', required('now', options.now), course.timeZone),
    hasNewForecast: options.forecast !== undefined,
  }
}

const ONE_PLAN = { least: 1, most: 1, names: 'one plan FILE' } as const

const runReplan = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options, words } = readOptions(argv, OPTIONS, ONE_PLAN)
  const input = await openReplan(io, words[0] ?? '', options)
  const again = replan(input)
  if (!again.ok) throw new BadInput(situationErrorWords(again.error))
  io.out(options.json === true ? JSON.stringify(again.value) : replanSummary(again.value, input.course))
  return again.value.caught.length === 0 && again.value.plan.unplanned.length === 0 ? 0 : 1
}

/** Longest warning that a bail-out is for, minutes: ten hours; beyond that a new plan is the better tool. */
const MOST_WARNING_MIN = 600

const runBailOut = async (argv: readonly string[], io: Io): Promise<number> => {
  const known = { ...OPTIONS, 'rain-in': 'text' } as const
  const { options, words } = readOptions(argv, known, ONE_PLAN)
  const range = { min: 1, max: MOST_WARNING_MIN }
  const rainInMin = wholeNumber('rain-in', required('rain-in', options['rain-in']), range) ?? 0
  const input = await openReplan(io, words[0] ?? '', options)
  const out = bailOut({ ...input, rainInMin })
  if (!out.ok) throw new BadInput(situationErrorWords(out.error))
  io.out(options.json === true ? JSON.stringify(out.value) : bailOutSummary(out.value, input.course))
  return out.value.caught === 0 ? 0 : 1
}

/** Judges a plan that was made in the middle of the work: for `plan check` with `--now`. */
export const checkAt = async (
  io: Io,
  plan: PlanToCheck,
  course: Course,
  options: Options,
): Promise<readonly Violation[]> => {
  const weather = await openForecast(io, options.forecast)
  const checked = checkPlanAt({
    course,
    weather,
    plan,
    problem: problemFor(plan, course, weather),
    facts: await openFacts(io, options.facts),
    now: instantIn('now', required('now', options.now), course.timeZone),
  })
  if (checked.ok) return checked.value.violations
  throw new BadInput(situationErrorWords(checked.error))
}

/** Plans made again in the middle of the work. */
export const REPLAN_COMMANDS: readonly Command[] = [
  {
    noun: 'plan',
    verb: 'replan',
    usage: 'FILE --course FILE --now TIME [--facts FILE] [--forecast F] [--json]',
    summary:
      'makes a plan again from what has happened by now, changing as little as it can; exit 1 when a green is caught or left out',
    run: runReplan,
  },
  {
    noun: 'plan',
    verb: 'bail-out',
    usage: 'FILE --course FILE --now TIME --rain-in MIN [--facts FILE] [--forecast F] [--json]',
    summary: 'rain in so many minutes: who finishes, clears or leaves which green; exit 1 when one is caught',
    run: runBailOut,
  },
]
