import { fail, ok, type Result } from '../result.ts'
import { MINUTE_MS } from '../time/zone.ts'
import { planBound } from './bound/plan-bound.ts'
import { check, checkPlan, isCleanSchedule } from './check/check.ts'
import { compileProblem } from './check/compile.ts'
import { lastSafeStarts } from './last-safe-start.ts'
import type { PlanError } from './plan-error.ts'
import { withPinRisks } from './pin-risks.ts'
import { withPins } from './plan-pins.ts'
import type { Plan, PlanPin, PlanToCheck } from './plan.ts'
import type { Problem, Schedule } from './problem.ts'
import { readProblem, type PlanInput, type Ports } from './read-problem.ts'
import type { Violation } from './rules.ts'
import { instantWriter, scheduleToPlan } from './schedule-to-plan.ts'
import { solve, type SolveOptions } from './solve/solve.ts'
import { weatherDryNeed, weatherSky } from './weather-sky.ts'

/** What a plan is made from, and how hard to search. */
export type MakePlanInput = Omit<PlanInput, 'days'> & {
  /** Content hash of the course, kept in the plan. */
  readonly courseHash: string
  /** Days of the horizon, 1 to 60; default 7. */
  readonly days?: number
  /** Default 1. Same input, seed and count of schedules: same plan. */
  readonly seed?: number
  /** Complete schedules to try, 1 to 1,000,000; default 3,000. */
  readonly schedules?: number
  /** Asked once a schedule; true ends the search with the best plan so far. */
  readonly stop?: () => boolean
  /** What the manager pinned: it stands whatever the search would rather do. */
  readonly pins?: readonly PlanPin[]
}

export const DEFAULT_DAYS = 7
export const DEFAULT_SCHEDULES = 3000

/** The weather room's sky and drying. */
export const WEATHER_PORTS: Ports = { sky: weatherSky, dryNeed: weatherDryNeed }

/** A schedule of a problem as a plan, with its last safe starts, its bound and the checker's word on it. */
export const planOfSchedule = (
  problem: Problem,
  schedule: Schedule,
  input: Pick<MakePlanInput, 'course' | 'prescription' | 'start' | 'courseHash'>,
  search: { readonly seed: number; readonly schedules: number },
): Plan => {
  const { course, prescription, start, courseHash } = input
  const frame = { course: { id: course.id, hash: courseHash }, prescription, start, ...search }
  const plan = scheduleToPlan(problem, schedule, frame)
  const compiled = compileProblem(problem)
  const write = instantWriter(problem)
  const safe = lastSafeStarts(problem, schedule.tasks, (tasks) =>
    isCleanSchedule(compiled, { ...schedule, tasks }),
  )
  const days = plan.days.map((day) => {
    const minute = safe.get(day.date)
    return { ...day, lastSafeStart: minute === undefined ? null : write(minute) }
  })
  const bound = planBound(problem, schedule.tasks)
  const gap =
    bound === null
      ? {}
      : { bound: { finish: write(bound.finishMin), gapPercent: bound.gapPercent, by: bound.by } }
  const timed = { ...plan, days, ...gap }
  const broken = check(compiled, { ...timed, feasible: true })
  if (broken.length === 0) return { ...timed, feasible: true }
  return withPinRisks({ ...timed, feasible: false }, broken)
}

/** Plans a problem that has been read. */
export const planProblem = (
  problem: Problem,
  input: MakePlanInput,
  onProgress?: SolveOptions['onProgress'],
): Plan => {
  const seed = input.seed ?? 1
  const solved = solve(problem, {
    seed,
    schedules: input.schedules ?? DEFAULT_SCHEDULES,
    ...(onProgress === undefined ? {} : { onProgress }),
    ...(input.stop === undefined ? {} : { stop: input.stop }),
  })
  return planOfSchedule(problem, solved.schedule, input, { seed, schedules: solved.schedules })
}

/** From course, prescription and weather to a plan. Errors: `PlanError`, when the input contradicts itself. */
export const makePlan = (
  input: MakePlanInput,
  onProgress?: SolveOptions['onProgress'],
  ports: Ports = WEATHER_PORTS,
): Result<Plan, PlanError> => {
  const problem = readProblem({ ...input, days: input.days ?? DEFAULT_DAYS }, ports)
  if (!problem.ok) return problem
  const pins = input.pins ?? []
  const pinned = withPins(problem.value, pins)
  if (!pinned.ok) return pinned
  const plan = planProblem(pinned.value, input, onProgress)
  return ok(pins.length === 0 ? plan : { ...plan, pins: [...pins] })
}

/** Days from the plan's start to its last task, with one to spare: the horizon that a plan is judged on. */
const horizonOf = (plan: PlanToCheck): number => {
  const last = Math.max(...plan.tasks.map((task) => Date.parse(task.finish)), Date.parse(plan.start))
  return Math.min(
    60,
    Math.max(DEFAULT_DAYS, Math.ceil((last - Date.parse(plan.start)) / (1440 * MINUTE_MS)) + 1),
  )
}

/** Judges a plan, also one written by hand, against a course and a forecast. Errors: `PlanError`. */
export const checkPlanAgainst = (
  plan: PlanToCheck,
  input: Pick<PlanInput, 'course' | 'weather'>,
  ports: Ports = WEATHER_PORTS,
): Result<readonly Violation[], PlanError> => {
  const problem = readProblem(
    { ...input, prescription: plan.prescription, start: plan.start, days: horizonOf(plan) },
    ports,
  )
  return problem.ok ? ok(checkPlan(problem.value, plan)) : fail(problem.error)
}
