import { fail, ok, type Result } from '../../result.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import type { Course } from '../../course/course.ts'
import { compileProblem } from '../check/compile.ts'
import type { CaughtState, LostReason, Proofs } from '../check/lost/lost.ts'
import type { Pace } from '../pace/learn-paces.ts'
import type { Plan, PlanToCheck } from '../plan.ts'
import type { Problem } from '../problem.ts'
import { instantWriter } from '../schedule-to-plan.ts'
import { scoreOf, type Score } from '../score.ts'
import { weatherSky } from '../weather-sky.ts'
import type { ReadSky } from '../sky.ts'
import { causesOf } from './because.ts'
import type { Candidate } from './candidate.ts'
import { changesOf, type PlanChange } from './changes.ts'
import type { Change } from './change.ts'
import type { DayFact } from './facts.ts'
import { planAgain } from './plan-again.ts'
import { brokenOf, chooseWay } from './replan.ts'
import { situationOf, type SituationError } from './situation.ts'
import { changesWeather } from './weather-with-facts.ts'

/** What a plan is made again from. */
export type ReplanInput = {
  readonly course: Course
  /** The problem as course, prescription and first day of the plan give it with `weather`: `planProblemOf` reads it. Kept by the app, since it does not change through the day. */
  readonly problem: Problem
  readonly weather: WeatherHours | null
  readonly plan: PlanToCheck
  readonly facts: readonly DayFact[]
  /** An instant with its offset. */
  readonly now: string
  /** Whether `weather` is newer than the plan: then the plan's own last safe starts do not hold any more. Default false. */
  readonly hasNewForecast?: boolean
}

/** A green that is caught whatever is done: how it stands, when, and why it could not be saved. The plan finishes it as soon as may be afterwards. */
export type CaughtGreen = {
  readonly green: string
  readonly state: CaughtState
  readonly at: string | null
  readonly reason: LostReason
  /** Minutes by which the very earliest finish is too late; 0 where that does not say. */
  readonly byMin: number
}

/** What the new plan costs against the old one. */
export type ReplanCost = Change & {
  readonly greensPutOff: number
  readonly greensLeftOut: number
  readonly greensCaught: number
  /** Later last finish, minutes; negative: earlier. */
  readonly finishLaterMin: number
  readonly moreOvertimeMin: number
  readonly moreShutGreenDays: number
  readonly moreFixtureClashes: number
}

/** A plan made again. */
export type Replanned = {
  /** The moment at which it was made, an instant of the course. */
  readonly now: string
  readonly plan: Plan
  readonly changes: readonly PlanChange[]
  readonly caught: readonly CaughtGreen[]
  readonly cost: ReplanCost
  readonly paces: readonly Pace[]
  /** Greens that are opened, worked and finished as they were planned. */
  readonly unchanged: readonly string[]
  /** How the plan was found, and how many ways were compared. */
  readonly by: string
  readonly ways: number
}

const costOf = (old: Score, best: Candidate): ReplanCost => ({
  ...best.change,
  greensPutOff: best.putOff,
  greensLeftOut: best.score.unfinishedGreens - old.unfinishedGreens,
  greensCaught: Math.max(best.caught.length, best.lost.length),
  finishLaterMin: best.score.finishMin - old.finishMin,
  moreOvertimeMin: best.score.overtimeMin - old.overtimeMin,
  moreShutGreenDays: best.score.shutGreenDays - old.shutGreenDays,
  moreFixtureClashes: best.score.fixtureClashes - old.fixtureClashes,
})

/**
 * Makes a plan again from any moment and any facts: the greens in work first, and as little changed as may be. Errors: the first fact that can't be used, a `now` that is none, a
 * threshold of the weather. Same input, same plan, on every machine; no clock, no chance.
 */
export const replan = (
  input: ReplanInput,
  readSky: ReadSky = weatherSky,
): Result<Replanned, SituationError> => {
  const { plan, facts } = input
  const read = situationOf({ ...input, tasks: plan.tasks }, readSky)
  if (!read.ok) return fail(read.error)
  const situation = read.value
  const { problem, base, oldTasks } = situation
  const broken = brokenOf(situation)
  const proofs: Proofs = new Map()
  const { best, ways } = chooseWay(situation, broken, proofs)
  const compiled = compileProblem(problem)
  const hasNewSky = input.hasNewForecast === true || changesWeather(facts)
  const old = {
    ...plan,
    course: plan.course,
    prescription: plan.prescription,
    start: plan.start,
    seed: plan.seed ?? 1,
    schedules: plan.schedules ?? 1,
  }
  const again = planAgain(compiled, best.schedule, best.faults === 0, proofs, old, oldTasks, !hasNewSky)
  const write = instantWriter(problem)
  const changes = changesOf({
    broken,
    schedule: best.schedule,
    causes: causesOf(situation, broken, facts, input.hasNewForecast === true),
  })
  const changed = new Set(changes.map((change) => change.green))
  const planned = new Set(oldTasks.map((task) => task.green))
  const oldScore = scoreOf(
    base,
    oldTasks,
    base.greens.filter((_, green) => !planned.has(green)).length + base.excluded.length,
  )
  return ok({
    now: write(situation.moment.nowMin),
    plan: again,
    changes,
    caught: best.lost.map((one) => ({
      green: one.id,
      state: one.state,
      at: one.atMin === null ? null : write(one.atMin),
      reason: one.reason,
      byMin: one.byMin,
    })),
    cost: costOf(oldScore, best),
    paces: situation.paces,
    unchanged: problem.greens.flatMap(({ id }, green) =>
      planned.has(green) && !changed.has(id) ? [id] : [],
    ),
    by: best.by,
    ways,
  })
}
