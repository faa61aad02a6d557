import type { Course } from '../../course/course.ts'
import { fail, ok, type Result } from '../../result.ts'
import type { CalculationError } from '../../catalogue/errors.ts'
import { MINUTE_MS } from '../../time/zone.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import { parseInstant } from '../check/instant.ts'
import { learnPaces, type Pace } from '../pace/learn-paces.ts'
import type { PlanTask } from '../plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import type { ReadSky } from '../sky.ts'
import type { FactError } from './fact-error.ts'
import type { DayFact } from './facts.ts'
import type { Moment } from './moment.ts'
import { scheduledTasks } from './old-plan.ts'
import { factorOf, problemAt } from './problem-at.ts'
import { resolveFacts } from './resolve-facts.ts'
import { isOpened, standingAt, standingIn, type FactorOf, type Standing } from './standing.ts'
import { timedCoverings } from './timed-coverings.ts'
import { skyWithFacts } from './told-sky.ts'

/** What is known when a plan is made again. */
export type SituationInput = {
  readonly course: Course
  /** The problem as course, prescription and first day of the plan give it, read with `weather`. */
  readonly problem: Problem
  readonly weather: WeatherHours | null
  readonly tasks: readonly PlanTask[]
  readonly facts: readonly DayFact[]
  /** Now, as an instant with its offset. */
  readonly now: string
}

/** Why there is no situation to plan from. Closed; `present` words it. */
export type SituationError =
  | FactError
  | { readonly type: 'badNow'; readonly received: string }
  | { readonly type: 'threshold'; readonly error: CalculationError }

/** The day at `now`: the facts, where the work stands, the paces learned, and the problem that is left. */
export type Situation = {
  readonly course: Course
  readonly base: Problem
  readonly problem: Problem
  readonly moment: Moment
  readonly standing: Standing
  readonly paces: readonly Pace[]
  /** The plan's tasks in minutes, in order of time; steps as in `base`. */
  readonly oldTasks: readonly ScheduledTask[]
}

type Stands = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  moment: Moment,
  factor: FactorOf,
) => Standing

const situationBy = (
  input: SituationInput,
  readSky: ReadSky,
  stands: Stands,
): Result<Situation, SituationError> => {
  const { course, problem, tasks, facts, weather } = input
  const nowMin = Math.floor((parseInstant(input.now) - problem.originMs) / MINUTE_MS)
  if (Number.isNaN(nowMin)) return fail({ type: 'badNow', received: input.now })
  const resolved = resolveFacts({ course, problem, tasks, nowMin }, facts)
  if (!resolved.ok) return resolved
  const moment = resolved.value
  const { originMs, days, horizonMin } = problem
  const sky = skyWithFacts(readSky, { course, weather, originMs, days, horizonMin }, facts)
  if (!sky.ok) return fail({ type: 'threshold', error: sky.error })
  const oldTasks = scheduledTasks(problem, tasks)
  const paces = learnPaces(timedCoverings(problem, oldTasks, moment))
  const factor: FactorOf = (green, step, machine) => {
    const own = problem.greens[green]?.steps[step]
    const id = problem.machines[machine]?.id
    return own === undefined || id === undefined
      ? 1
      : factorOf(moment.slower, paces, green, own, { index: machine, id })
  }
  const sunny = sky.value === null ? problem : { ...problem, ...sky.value }
  // What has been done was done under the weather that there was: only later work bends to what is told now.
  const standing = stands(problem, oldTasks, moment, factor)
  for (const [green, { fact }] of moment.skipped)
    if (isOpened(problem, standing.tasks, green)) {
      const id = problem.greens[green]?.id ?? ''
      return fail({
        type: 'badFact',
        index: fact,
        kind: 'skipped',
        field: 'green',
        problem: 'inWork',
        accepted: [],
        received: id,
      })
    }
  const changed = { course, moment, standing, paces, sky: sky.value }
  return ok({
    course,
    base: sunny,
    problem: problemAt(problem, changed),
    moment,
    standing,
    paces,
    oldTasks,
  })
}

/** The situation in which an old plan is made again. */
export const situationOf = (input: SituationInput, readSky: ReadSky): Result<Situation, SituationError> =>
  situationBy(input, readSky, standingAt)

/** The situation in which a plan that was made at `now` itself is judged: what it has begun before then is taken as it stands. */
export const situationIn = (input: SituationInput, readSky: ReadSky): Result<Situation, SituationError> =>
  situationBy(input, readSky, standingIn)
