import { isOperation, type Plan, type PlanTask } from '@swardwright/engine'
import { dateAt } from '@swardwright/present'

/** A stay of one person at one green: the steps there, in order. */
export type CrewStay = {
  readonly green: string
  readonly tasks: readonly PlanTask[]
}

/** What somebody told of a step last: done, begun and going on, or begun and broken off. */
export type StepTold = { readonly done: boolean; readonly begun: boolean; readonly stopped: boolean }

/** The stays of one person on one day, in the order of the day: consecutive steps on one green are one stay. */
export const staysOf = (plan: Plan, date: string, person: string, timeZone: string): readonly CrewStay[] => {
  const stays: { green: string; tasks: PlanTask[] }[] = []
  const tasks = plan.tasks
    .filter(
      (task) =>
        task.people.includes(person) && isOperation(task.operation) && dateAt(task.start, timeZone) === date,
    )
    .toSorted((a, b) => Date.parse(a.start) - Date.parse(b.start))
  for (const task of tasks) {
    if (task.green === null) continue
    const last = stays.at(-1)
    if (last?.green === task.green) last.tasks.push(task)
    else stays.push({ green: task.green, tasks: [task] })
  }
  return stays
}

/** Stays that are not over: a green that was told finished is over, a step told done is left out; else a step is over when the plan’s time for it is past. */
export const staysLeft = (
  stays: readonly CrewStay[],
  known: {
    readonly atMs: number
    readonly finished: ReadonlySet<string>
    readonly told: (task: PlanTask) => StepTold
  },
): readonly CrewStay[] =>
  stays.flatMap(({ green, tasks }) => {
    if (known.finished.has(green)) return []
    const left = tasks.filter((task) => {
      const { done, begun, stopped } = known.told(task)
      return !done && (begun || stopped || Date.parse(task.finish) > known.atMs)
    })
    return left.length === 0 ? [] : [{ green, tasks: left }]
  })
