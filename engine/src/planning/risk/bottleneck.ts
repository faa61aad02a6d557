import type { Problem, ScheduledTask, Span } from '../problem.ts'
import { intersectSpans } from '../spans.ts'

/** How busy a machine, or the crew as a whole, is while greens are worked. People are never told apart. */
export type Use = {
  /** Index of the machine; null for the crew as a whole. */
  readonly machine: number | null
  /** Minutes of work, ways, set-ups and loads. */
  readonly busyMin: number
  /** Minutes it could have worked between the first and the last task of each day. */
  readonly couldMin: number
}

/** From the first start to the last finish of each day that has tasks. */
const workedSpans = (problem: Problem, tasks: readonly ScheduledTask[]): readonly Span[] =>
  problem.days.flatMap(({ startMin, endMin }) => {
    const today = tasks.filter((task) => task.startMin >= startMin && task.startMin < endMin)
    if (today.length === 0) return []
    const start = Math.min(...today.map((task) => task.startMin))
    return [{ start, end: Math.max(...today.map((task) => task.finishMin)) }]
  })

const minutesOf = (spans: readonly Span[]): number =>
  spans.reduce((sum, { start, end }) => sum + end - start, 0)

/** Use of each machine that has a task, and of the crew, the busiest first. */
export const usesOf = (problem: Problem, tasks: readonly ScheduledTask[]): readonly Use[] => {
  const worked = workedSpans(problem, tasks)
  const machines = problem.machines.flatMap((machine, index): readonly Use[] => {
    const own = tasks.filter((task) => task.machine === index)
    if (own.length === 0) return []
    const busyMin = own.reduce((sum, task) => sum + task.finishMin - task.startMin, 0)
    return [{ machine: index, busyMin, couldMin: minutesOf(intersectSpans(machine.available, worked)) }]
  })
  const crew = {
    machine: null,
    busyMin: tasks.reduce((sum, task) => sum + (task.finishMin - task.startMin) * task.people.length, 0),
    couldMin: problem.people.reduce((sum, { shifts }) => sum + minutesOf(intersectSpans(shifts, worked)), 0),
  }
  const share = ({ busyMin, couldMin }: Use): number => (couldMin === 0 ? 0 : busyMin / couldMin)
  return [...machines, crew].sort((a, b) => share(b) - share(a))
}
