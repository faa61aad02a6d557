import {
  DEFAULT_RISK,
  DEFAULT_SCHEDULES,
  makePlan,
  makeSafePlan,
  planRisk,
  whatIf,
  type Course,
  type OneMore,
  type PlanError,
  type RiskWish,
} from '@swardwright/engine'
import {
  planErrorWords,
  planNames,
  planSummary,
  riskSummary,
  unplannedSentence,
  whatIfSummary,
} from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { openCourse, openForecast, openPlan } from './files.ts'
import { numberWithin, readOptions, required, wholeNumber } from './options.ts'
import { openPlanInput, PLAN_OPTIONS, PLAN_USAGE, withAssumed } from './plan-input.ts'

const RISK_OPTIONS = { level: 'text', draws: 'text', 'risk-seed': 'text' } as const
const RISK_USAGE = '[--level PERCENT] [--draws N] [--risk-seed N]'

const riskWish = (options: { readonly [K in keyof typeof RISK_OPTIONS]?: string }): RiskWish => {
  const percent = numberWithin('level', options.level, { min: 0.1, max: 50, unit: '%' })
  return {
    level: percent === undefined ? DEFAULT_RISK.level : percent / 100,
    draws: wholeNumber('draws', options.draws, { min: 10, max: 2000 }) ?? DEFAULT_RISK.draws,
    seed: wholeNumber('risk-seed', options['risk-seed'], { min: 0, max: 2_147_483_647 }) ?? DEFAULT_RISK.seed,
  }
}

const refused = (error: PlanError | { readonly type: 'noWeather' }): BadInput =>
  new BadInput(
    error.type === 'noWeather'
      ? 'give a forecast with --forecast: without weather there is no chance to reckon'
      : planErrorWords(error),
  )

const risk = async (argv: readonly string[], io: Io): Promise<number> => {
  const known = { course: 'text', forecast: 'text', ...RISK_OPTIONS, json: 'flag' } as const
  const { options, words } = readOptions(argv, known, { least: 1, most: 1, names: 'one plan FILE' })
  const plan = await openPlan(io, words[0] ?? '')
  const { course } = await openCourse(io, required('course', options.course))
  const weather = await openForecast(io, options.forecast)
  const found = planRisk(plan, { course, weather }, riskWish(options))
  if (!found.ok) throw refused(found.error)
  if (options.json === true) io.out(JSON.stringify(found.value))
  else io.out(riskSummary(found.value, course))
  return found.value.days.every(({ chance }) => chance <= found.value.level) ? 0 : 1
}

const safe = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(argv, { ...PLAN_OPTIONS, ...RISK_OPTIONS, json: 'flag' })
  const { input, course, assumed } = await openPlanInput(io, options)
  const search = { seed: input.seed ?? 1, schedules: input.schedules ?? DEFAULT_SCHEDULES }
  const made = makeSafePlan(input, riskWish(options), search)
  if (!made.ok) throw refused(made.error)
  const plan = withAssumed(made.value.plan, assumed)
  if (options.json === true) io.out(JSON.stringify({ ...made.value, plan }))
  else {
    io.out(planSummary(plan, course, (entry) => unplannedSentence(entry, planNames(course, plan))))
    io.out(`\nThis plan. ${riskSummary(made.value.risk, course)}`)
    io.out(`\nThe plain plan. ${riskSummary(made.value.plainRisk, course)}`)
  }
  return plan.unplanned.length === 0 ? 0 : 1
}

/** Reads 'machine:corer,person:p1'. */
const oneMores = (course: Course, text: string): readonly OneMore[] =>
  text.split(',').map((part) => {
    const [kind = '', like = ''] = part.split(':')
    const list = kind === 'machine' ? course.machines : kind === 'person' ? course.people : []
    if (!list.some(({ id }) => id === like))
      throw new BadInput(
        `--add is '${part}'; it must be machine:ID or person:ID with an ID of the course, several parted by commas`,
      )
    return kind === 'machine' ? { kind: 'machine', like } : { kind: 'person', like }
  })

const compare = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(argv, { ...PLAN_OPTIONS, add: 'text', json: 'flag' })
  const { input, course } = await openPlanInput(io, options)
  const changes = oneMores(course, required('add', options.add))
  const made = whatIf(course, changes, (changed) => makePlan({ ...input, course: changed }))
  if (!made.ok)
    throw made.error.type === 'unknownLike' ? new BadInput('nothing of that id') : refused(made.error)
  if (options.json === true)
    io.out(
      JSON.stringify(
        made.value.map(({ change, plan: { objective, openings, unplanned } }) => ({
          change,
          objective,
          greens: openings.length,
          unplanned: unplanned.length,
        })),
      ),
    )
  else io.out(whatIfSummary(made.value, course))
  return 0
}

/** What the weather that may come means for a plan, and what one thing more would buy. */
export const PLAN_RISK_COMMANDS: readonly Command[] = [
  {
    noun: 'plan',
    verb: 'risk',
    usage: `FILE --course F --forecast F ${RISK_USAGE} [--json]`,
    summary: 'tells the chance of a caught green day by day; exit 1 when a day is over the level',
    run: risk,
  },
  {
    noun: 'plan',
    verb: 'safe',
    usage: `${PLAN_USAGE} ${RISK_USAGE} [--json]`,
    summary: 'plans so that the chance of a caught green stays under a level, the plain plan beside it',
    run: safe,
  },
  {
    noun: 'plan',
    verb: 'what-if',
    usage: `${PLAN_USAGE} --add machine:ID,person:ID [--json]`,
    summary: 'plans the week as it is and with one more machine or person, side by side',
    run: compare,
  },
]
