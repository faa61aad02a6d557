import { bailOut as bailOutOf, replan as planAgain, whyTask } from '@swardwright/engine'
import { problemFor } from '../plan-problem.ts'
import type { Doing } from '../work.ts'

export { dayNow as day } from '../day-now.ts'

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
