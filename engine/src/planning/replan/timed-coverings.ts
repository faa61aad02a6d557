import type { Operation } from '../operations.ts'
import type { TimedCovering } from '../pace/learn-paces.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { isWork } from './field.ts'
import type { Moment } from './moment.ts'
import { stepTasks } from './old-plan.ts'

/** The coverings whose start and finish were both told, with the minutes that the plan had for them. The machine is the one that the plan put on them. */
export const timedCoverings = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  moment: Moment,
): readonly TimedCovering[] => {
  const byStep = stepTasks(problem, tasks.filter(isWork))
  return problem.greens.flatMap(({ steps }, green) =>
    steps.flatMap((step, index): readonly TimedCovering[] => {
      const spells = moment.spells[green]?.[index] ?? []
      const [spell] = spells
      const machine = problem.machines[byStep[green]?.[index]?.machine ?? -1]
      const plannedMin = machine === undefined ? undefined : step.minutesByMachine.get(machine.id)
      if (spells.length !== 1 || spell === undefined || spell.end !== 'finished') return []
      if (machine === undefined || plannedMin === undefined) return []
      if (spell.startMin === null || spell.endMin === null || spell.endMin <= spell.startMin) return []
      const operation: Operation = step.operation
      return [{ machine: machine.id, operation, plannedMin, takenMin: spell.endMin - spell.startMin }]
    }),
  )
}
