import { stepOf, type Facts, type TaskFact } from '../facts.ts'
import { findingOf, type RuleCheck } from '../finding.ts'
import { SLACK_MIN } from '../spans.ts'

/** Minutes that a task takes at least; 0 where the problem does not say. */
const leastMin = (facts: Facts, task: TaskFact): number => {
  const machine = task.machine === null ? undefined : facts.problem.machines[task.machine]
  if (machine === undefined) return 0
  if (task.kind === 'setUp') return machine.setUpMin
  if (task.kind === 'load') return machine.loadMin
  if (task.kind !== 'move') return stepOf(facts, task)?.minutesByMachine.get(machine.id) ?? 0
  const { begins, ends } = task.way
  if (begins === null || ends === null) return 0
  return machine.travelMin[begins * facts.problem.places.length + ends] ?? 0
}

/** Rule 5, `taskTooShort`: at least the minutes that the work, the set-up, the load or the way takes. Counts minutes. */
export const taskTooShort: RuleCheck = (facts) =>
  facts.timed.flatMap((task) => {
    const by = leastMin(facts, task) - (task.finishMin - task.startMin)
    return by > SLACK_MIN ? [findingOf('taskTooShort', task, by)] : []
  })
