import type { Problem, ScheduledTask } from '../problem.ts'
import { AS_FORECAST, carefulProblem, sharesOf, type Care } from './careful-sky.ts'
import { askedOf, chanceAsPlanned, overScenarios } from './day-risk.ts'
import { dayPlans, type DayPlan } from './play-out.ts'
import type { Scenario } from './scenario.ts'

/** Makes a schedule of a problem: the search, handed in. Tasks in start order. */
export type Schedules = (problem: Problem) => readonly ScheduledTask[]

/** What the plan is asked to keep. */
export type Caution = {
  /** The manager's level: highest chance of a caught green on any one day, 0 to 1. */
  readonly level: number
  readonly scenarios: readonly Scenario[]
}

/** A plan that keeps the level, and what it took. */
export type WeatherSafe = {
  readonly tasks: readonly ScheduledTask[]
  /** By day of the problem. */
  readonly care: readonly Care[]
  /** Plans made on the way. */
  readonly rounds: number
}

/** Shares of the skies that a day gives way to, one after the other. */
const SHARES = [0.3, 0.15, 0.07, 0.03, 0.01]

/** Rounds of planning; days that are over the level even then open nothing. */
const MOST_ROUNDS = 14

/** How many of the greens that a day opens could stay, opened in their order, without going over a level, and when these are finished. */
type Kept = { readonly greens: number; readonly finishMin: number }

/** A day on its way to enough care. */
type DayCare = {
  care: Care
  /** The care under which the day kept most greens so far, and what it kept. */
  best: { readonly care: Care; readonly kept: Kept } | null
  /** No other share is tried any more, only fewer greens. */
  isSettled: boolean
}

const keptUnder = (plan: DayPlan, scenarios: readonly Scenario[], level: number): Kept => {
  let kept: Kept = { greens: 0, finishMin: plan.problem.days[plan.day]?.startMin ?? 0 }
  for (const { openMin, finishMin } of plan.greens) {
    if (overScenarios(plan, scenarios, openMin).chance > level) return kept
    kept = { greens: kept.greens + 1, finishMin: Math.max(kept.finishMin, finishMin) }
  }
  return kept
}

/** Keeps the greens that were safe under the best care so far, and opens no more. */
const settle = (state: DayCare): void => {
  const { care, kept } = state.best ?? { care: state.care, kept: { greens: 0, finishMin: 0 } }
  state.isSettled = true
  state.care = { ...care, finishBy: kept.finishMin }
}

/** One step for a day that is over the level. */
const giveWay = (state: DayCare, kept: Kept): void => {
  const { care } = state
  if (state.best === null || kept.greens > state.best.kept.greens) state.best = { care, kept }
  const share = SHARES.find((next) => next < (care.share ?? 1))
  if (state.isSettled) state.care = { ...care, finishBy: Math.min(kept.finishMin, (care.finishBy ?? 0) - 1) }
  else if (share === undefined) settle(state)
  else state.care = { share, finishBy: null }
}

/**
 * A plan whose chance of a caught green stays under a level on every day, over skies that may come. Each day that is too risky is planned under a sky that is
 * more careful than the forecast (hours that some skies spoil, slow drying), and the week again, until no day is over the level. Where more care would open fewer greens
 * than could have been kept with less, the day goes back to that and opens no more than those.
 * A plan that fits the careful sky fits the forecast too. The same skies are asked in each round (sample average with common random numbers).
 */
export const weatherSafe = (problem: Problem, schedules: Schedules, caution: Caution): WeatherSafe => {
  const { scenarios } = caution
  const level = askedOf(caution.level, scenarios.length)
  const shares = sharesOf(problem, scenarios)
  const states: DayCare[] = problem.days.map(() => ({ care: AS_FORECAST, best: null, isSettled: false }))
  let tasks = schedules(problem)
  let rounds = 1
  for (;;) {
    const plans = new Map(dayPlans(problem, tasks).map((plan) => [plan.day, plan]))
    let isDone = true
    for (const [day, state] of states.entries()) {
      const plan = plans.get(day)
      const isOver = plan !== undefined && chanceAsPlanned(plan, scenarios) > level
      const opens = plan?.greens.length ?? 0
      if (isOver && rounds >= MOST_ROUNDS)
        state.care = { ...state.care, finishBy: problem.days[day]?.startMin ?? 0 }
      else if (isOver) giveWay(state, keptUnder(plan, scenarios, level))
      else if (!state.isSettled && opens < (state.best?.kept.greens ?? 0)) settle(state)
      else continue
      isDone = false
    }
    if (isDone) break
    tasks = schedules(
      carefulProblem(
        problem,
        shares,
        states.map(({ care }) => care),
      ),
    )
    rounds++
  }
  return { tasks, care: states.map(({ care }) => care), rounds }
}
