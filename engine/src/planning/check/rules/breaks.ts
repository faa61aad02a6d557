import type { ProblemBreak } from '../../problem.ts'
import { spanOf, type TaskFact } from '../facts.ts'
import type { Finding, RuleCheck } from '../finding.ts'
import { sharedMin, SLACK_MIN } from '../spans.ts'

/** The longest stretch of a window that tasks in order of time leave free. */
const longestFreeMin = (window: ProblemBreak['window'], tasks: readonly TaskFact[]): number => {
  let cursor = window.start
  let longest = 0
  for (const { startMin, finishMin } of tasks) {
    longest = Math.max(longest, startMin - cursor)
    cursor = Math.max(cursor, finishMin)
  }
  return Math.max(longest, window.end - cursor)
}

/** Whether what was begun before now has taken the break already: then no plan from now on can miss it. */
const isLost = (
  { window, minutes }: ProblemBreak,
  busy: readonly TaskFact[],
  nowMin: number | undefined,
): boolean =>
  nowMin !== undefined &&
  minutes -
    longestFreeMin(
      window,
      busy.filter(({ startMin }) => startMin < nowMin),
    ) >
    SLACK_MIN

const inWindow = (
  one: ProblemBreak,
  tasks: readonly TaskFact[],
  nowMin: number | undefined,
): readonly Finding[] => {
  const { window, minutes } = one
  const busy = tasks.filter((task) => sharedMin(window, spanOf(task)) > 0)
  if (isLost(one, busy, nowMin)) return []
  const first = busy[0]
  const by = minutes - longestFreeMin(window, busy)
  return first === undefined || by <= SLACK_MIN
    ? []
    : [
        {
          rule: 'breakMissed',
          green: first.greenName,
          atMin: window.start,
          by,
          tasks: busy.map(({ id }) => id),
        },
      ]
}

/** Rule 12, `breakMissed`: in each break window a free stretch as long as the break remains. Counts the minutes missing, at the window's start. */
export const breakMissed: RuleCheck = ({ byPerson, problem }) =>
  byPerson.flatMap((tasks, person) =>
    (problem.people[person]?.breaks ?? []).flatMap((one) => inWindow(one, tasks, problem.committed?.nowMin)),
  )
