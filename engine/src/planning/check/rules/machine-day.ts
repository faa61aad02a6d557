import { dayOfStart } from '../days.ts'
import { findingOf, type RuleCheck } from '../finding.ts'

/** Rule 6, `noSetUp`: before its first other task of a day a machine has been set up that day. Counts the minutes of the set-up. */
export const noSetUp: RuleCheck = ({ byMachine, problem }) =>
  byMachine.flatMap((tasks, index) => {
    const setUpMin = problem.machines[index]?.setUpMin ?? 0
    if (setUpMin === 0) return []
    const begun = new Set<number>()
    return tasks.flatMap((task) => {
      const day = dayOfStart(problem.days, task.startMin)
      if (begun.has(day)) return []
      begun.add(day)
      return task.kind === 'setUp' ? [] : [findingOf('noSetUp', task, setUpMin)]
    })
  })

/** Rule 7, `noMove`: a machine is where its task is. Counts the minutes of the way that no move covers. */
export const noMove: RuleCheck = ({ byMachine, problem }) =>
  byMachine.flatMap((tasks, index) =>
    tasks.flatMap((task) => {
      const { machineFrom, begins } = task.way
      if (machineFrom === null || begins === null || machineFrom === begins) return []
      const wayMin = problem.machines[index]?.travelMin[machineFrom * problem.places.length + begins] ?? 0
      return [findingOf('noMove', task, wayMin)]
    }),
  )
