import { greenId, type Facts, type TaskFact } from '../facts.ts'
import { findingOf, type RuleCheck } from '../finding.ts'
import { UNKNOWN } from '../read-tasks.ts'
import { isOperation } from '../steps.ts'

/** Rule 13, `missingOperation`: each step of a planned green is there. Counts steps, each apart. */
export const missingOperation: RuleCheck = (facts) =>
  facts.stepTasks.flatMap((steps, green) =>
    facts.planned.has(green)
      ? steps
          .filter((task) => task === undefined)
          .map(() => ({
            rule: 'missingOperation',
            green: greenId(facts, green),
            atMin: null,
            by: 1,
            tasks: [],
          }))
      : [],
  )

const isExtra = ({ problem, compiled }: Facts, task: TaskFact): boolean => {
  if (task.green === UNKNOWN) return false
  if (task.kind === 'load') {
    return (
      task.timed &&
      task.served === null &&
      task.green !== null &&
      task.load !== null &&
      task.machine !== null &&
      task.machine !== UNKNOWN
    )
  }
  if (!isOperation(task) || task.step !== null) return false
  const withoutSteps = task.green !== null && problem.greens[task.green] === undefined
  return !(withoutSteps && compiled.servicesMissing.has(task.green))
}

/** Rule 13, `extraOperation`: nothing is done that no step asks for, and no load fetched for one. Counts tasks, each apart. */
export const extraOperation: RuleCheck = (facts) =>
  facts.tasks.flatMap((task) => (isExtra(facts, task) ? [findingOf('extraOperation', task, 1)] : []))
