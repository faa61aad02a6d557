import type { Plan } from '../../plan.ts'
import { findingOf, type Finding, type RuleCheck } from '../finding.ts'
import { UNKNOWN } from '../read-tasks.ts'
import type { CompiledProblem } from '../compile.ts'

/** Rule 1, `unknownId`: every green, machine and person that a task names is one of the course. Counts names. */
export const unknownId: RuleCheck = ({ tasks }) =>
  tasks.flatMap((task) => {
    const unknown = [task.green, task.machine, ...task.people].filter((index) => index === UNKNOWN)
    return unknown.length > 0 ? [findingOf('unknownId', task, unknown.length)] : []
  })

/** The same for the greens that are listed as unplanned. */
export const unknownUnplanned = (
  compiled: CompiledProblem,
  unplanned: Plan['unplanned'],
): readonly Finding[] =>
  unplanned
    .filter(({ green }) => !compiled.greenIndex.has(green))
    .map(({ green }) => ({ rule: 'unknownId', green, atMin: null, by: 1, tasks: [] }))

/**
 * Rule 1, `badTime`: finish is not before start; both lie in the horizon. Counts minutes, the larger excess;
 * of times that cannot be read their number, with no moment.
 */
export const badTime: RuleCheck = ({ tasks, problem }) =>
  tasks.flatMap((task) => {
    const unread = [task.startMin, task.finishMin].filter(Number.isNaN).length
    if (unread > 0) return [findingOf('badTime', task, unread)]
    const excess = Math.max(
      task.startMin - task.finishMin,
      -task.startMin,
      task.finishMin - problem.horizonMin,
      task.startMin - problem.horizonMin,
    )
    return excess > 0 ? [{ ...findingOf('badTime', task, excess), atMin: task.startMin }] : []
  })
