import {
  bailOut as bailOutOf,
  checkPlanAgainst,
  courseHash,
  DEFAULT_SCHEDULES,
  makePlan,
  replan as planAgain,
  whyTask,
} from '@swardwright/engine'
import { problemFor } from '../plan-problem.ts'
import type { Doing } from '../work.ts'

export { dayNow as day } from '../day-now.ts'

export const plan: Doing<'plan'> = (input, onProgress) => {
  const of = input.schedules ?? DEFAULT_SCHEDULES
  return makePlan({ ...input, courseHash: courseHash(input.course) }, ({ schedules, best }) =>
    onProgress({ schedules, of, unfinished: best.unfinishedGreens }),
  )
}

export const check: Doing<'check'> = ({ plan: shown, course, weather }) =>
  checkPlanAgainst(shown, { course, weather })

export const replan: Doing<'replan'> = (input) => {
  const problem = problemFor(input.plan, input.course, input.weather)
  return problem.ok ? planAgain({ ...input, problem: problem.value }) : problem
}

export const why: Doing<'why'> = ({ plan: shown, course, weather, task }) => {
  const problem = problemFor(shown, course, weather)
  return problem.ok ? whyTask(problem.value, shown, task) : null
}

export const bailOut: Doing<'bailOut'> = ({ day, rainInMin }) => {
  const problem = problemFor(day.plan, day.course, day.weather)
  return problem.ok ? bailOutOf({ ...day, problem: problem.value, rainInMin }) : problem
}
