import { fail, ok, type Result } from '../../result.ts'
import { spreadForecast } from '../../weather/back-test.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import { planOfSchedule, WEATHER_PORTS, DEFAULT_DAYS, type MakePlanInput } from '../make-plan.ts'
import type { PlanError } from '../plan-error.ts'
import { tasksOfPlan } from '../plan-to-tasks.ts'
import type { Plan, PlanToCheck } from '../plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { readProblem, type Ports } from '../read-problem.ts'
import { instantWriter } from '../schedule-to-plan.ts'
import { solve } from '../solve/solve.ts'
import { usesOf } from './bottleneck.ts'
import { dayRisk, type DayRisk } from './day-risk.ts'
import { dayPlans } from './play-out.ts'
import { scenariosOf, type Scenario } from './scenario.ts'
import { weatherSafe } from './weather-safe.ts'

/** How the weather that may come is drawn and what the manager accepts. */
export type RiskWish = {
  /** Highest chance of a caught green on any one day, 0 to 1. */
  readonly level: number
  /** Skies drawn round a plain forecast, 10 to 2,000; an ensemble of five members or more is taken as it is. */
  readonly draws: number
  readonly seed: number
}

/** A level that asks for care without stopping the work: our own choice. */
export const DEFAULT_RISK: RiskWish = { level: 0.05, draws: 400, seed: 1 }

/** Fewer members than this say too little of what may come. */
const LEAST_MEMBERS = 5

/** There is no weather to draw from. */
export type NoWeather = { readonly type: 'noWeather' }

/** The chance of a caught green, day by day, with instants of the course. Chances from 0 to 1. */
export type PlanRisk = {
  readonly level: number
  /** Skies played out. */
  readonly draws: number
  /** `ensemble`: members of the source; `spread`: one forecast with its usual errors drawn round it. */
  readonly source: 'ensemble' | 'spread'
  readonly days: readonly {
    readonly date: string
    /** Greens that the plan opens on the day. */
    readonly planned: number
    /** If none is opened after the planned opening of the last. */
    readonly chance: number
    /** Standard error of the chance, from the number of skies. */
    readonly standardError: number
    /** After this no green is opened if the chance is to stay under the level; null when none may be opened. */
    readonly lastSafeStart: string | null
    readonly curve: readonly { readonly green: string; readonly opens: string; readonly chance: number }[]
    /** Mean over the skies, without and with the last safe start kept. */
    readonly opened: DayRisk['opened']
    readonly finished: DayRisk['finished']
  }[]
  /** Machines (by id) and the crew as a whole (null), the busiest first. */
  readonly uses: readonly {
    readonly machine: string | null
    readonly busyMin: number
    readonly couldMin: number
  }[]
}

const mayCome = (
  weather: WeatherHours,
  wish: RiskWish,
): Pick<PlanRisk, 'source'> & { ensemble: WeatherHours } =>
  weather.members >= LEAST_MEMBERS
    ? { source: 'ensemble', ensemble: weather }
    : { source: 'spread', ensemble: spreadForecast(weather, { members: wish.draws, seed: wish.seed }) }

const reportOf = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  scenarios: readonly Scenario[],
  from: { readonly wish: RiskWish; readonly source: PlanRisk['source'] },
): PlanRisk => {
  const write = instantWriter(problem)
  const { level } = from.wish
  return {
    level,
    draws: scenarios.length,
    source: from.source,
    days: dayPlans(problem, tasks).map((plan) => {
      const risk = dayRisk(plan, scenarios, level)
      return {
        date: problem.days[plan.day]?.date ?? '',
        planned: plan.greens.length,
        chance: risk.chance,
        standardError: Math.sqrt((risk.chance * (1 - risk.chance)) / Math.max(1, scenarios.length)),
        lastSafeStart: risk.lastSafeStartMin === null ? null : write(risk.lastSafeStartMin),
        curve: risk.curve.map(({ green, openMin, chance }) => ({
          green: problem.greens[green]?.id ?? '',
          opens: write(openMin),
          chance,
        })),
        opened: risk.opened,
        finished: risk.finished,
      }
    }),
    uses: usesOf(problem, tasks).map(({ machine, busyMin, couldMin }) => ({
      machine: machine === null ? null : (problem.machines[machine]?.id ?? ''),
      busyMin,
      couldMin,
    })),
  }
}

type Drawn = {
  readonly problem: Problem
  readonly scenarios: readonly Scenario[]
  readonly source: PlanRisk['source']
}

const drawn = (
  input: Omit<MakePlanInput, 'courseHash'>,
  wish: RiskWish,
  ports: Ports,
): Result<Drawn, PlanError | NoWeather> => {
  const { weather, course } = input
  if (weather === null) return fail({ type: 'noWeather' })
  const problem = readProblem({ ...input, days: input.days ?? DEFAULT_DAYS }, ports)
  if (!problem.ok) return problem
  const { source, ensemble } = mayCome(weather, wish)
  const scenarios = scenariosOf(problem.value, course, ensemble, ports.sky)
  if (!scenarios.ok) return fail({ type: 'threshold', error: scenarios.error })
  return ok({ problem: problem.value, scenarios: scenarios.value, source })
}

/**
 * The chance of a caught green on each day of a plan, also one written by hand, over the weather that may come.
 * Errors: `PlanError`; `NoWeather` when there is no forecast to draw from.
 */
export const planRisk = (
  plan: PlanToCheck,
  input: Pick<MakePlanInput, 'course' | 'weather' | 'days'>,
  wish: RiskWish = DEFAULT_RISK,
  ports: Ports = WEATHER_PORTS,
): Result<PlanRisk, PlanError | NoWeather> => {
  const read = drawn({ ...input, prescription: plan.prescription, start: plan.start }, wish, ports)
  if (!read.ok) return read
  const { problem, scenarios, source } = read.value
  return ok(reportOf(problem, tasksOfPlan(problem, plan), scenarios, { wish, source }))
}

/** A plan that keeps the level, its risk, and what the plain plan of the same search would have risked. */
export type SafePlan = { readonly plan: Plan; readonly risk: PlanRisk; readonly plainRisk: PlanRisk }

/**
 * Makes a plan whose chance of a caught green stays under the level on every day (`weatherSafe`), with the plain plan's risk beside it, so that caution has its price.
 * Errors: `PlanError`; `NoWeather` when there is no forecast to draw from.
 */
export const makeSafePlan = (
  input: MakePlanInput,
  wish: RiskWish,
  search: { readonly seed: number; readonly schedules: number },
  ports: Ports = WEATHER_PORTS,
): Result<SafePlan, PlanError | NoWeather> => {
  const read = drawn(input, wish, ports)
  if (!read.ok) return read
  const { problem, scenarios, source } = read.value
  const plain = solve(problem, search)
  let last = plain
  const safe = weatherSafe(
    problem,
    (asked) => {
      last = asked === problem ? plain : solve(asked, search)
      return last.schedule.tasks
    },
    { level: wish.level, scenarios },
  )
  const report = (tasks: readonly ScheduledTask[]): PlanRisk =>
    reportOf(problem, tasks, scenarios, { wish, source })
  return ok({
    plan: planOfSchedule(problem, last.schedule, input, {
      seed: search.seed,
      schedules: last.schedules,
    }),
    risk: report(safe.tasks),
    plainRisk: report(plain.schedule.tasks),
  })
}
