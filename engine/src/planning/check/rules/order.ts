import type { ProblemStep } from '../../problem.ts'
import { dayOfFinish, dayOfStart } from '../days.ts'
import type { Facts, TaskFact } from '../facts.ts'
import type { Finding, RuleCheck } from '../finding.ts'
import { SLACK_MIN } from '../spans.ts'

type Pair = { readonly before: TaskFact; readonly task: TaskFact; readonly step: ProblemStep }

/** Steps that are there, each with the nearest before it that is there. */
const pairsOf = (facts: Facts, green: number): readonly Pair[] => {
  const pairs: Pair[] = []
  let before: TaskFact | null = null
  for (const [index, task] of (facts.stepTasks[green] ?? []).entries()) {
    const step = facts.problem.greens[green]?.steps[index]
    if (task === undefined || !task.timed || step === undefined) continue
    if (before !== null) pairs.push({ before, task, step })
    before = task
  }
  return pairs
}

/** Minutes until a *next day* step may start; 0 when it may. */
const nextDayWaitMin = ({ problem }: Facts, { before, task, step }: Pair): number => {
  if (!step.nextDay) return 0
  const { days } = problem
  const dayBefore = Math.max(dayOfStart(days, before.startMin), dayOfFinish(days, before.finishMin))
  if (dayOfStart(days, task.startMin) > dayBefore) return 0
  return (days[dayBefore]?.endMin ?? problem.horizonMin) - task.startMin
}

const judge = (facts: Facts, pair: Pair): readonly Finding[] => {
  const { before, task, step } = pair
  const earlyMin = before.finishMin - task.startMin
  const where = { green: task.greenName, atMin: task.startMin, tasks: [before.id, task.id] }
  if (earlyMin > SLACK_MIN) return [{ rule: 'outOfOrder', by: earlyMin, ...where }]
  const waitMin = Math.max(earlyMin + step.lagMin, nextDayWaitMin(facts, pair))
  return waitMin > SLACK_MIN ? [{ rule: 'lagTooShort', by: waitMin, ...where }] : []
}

/** Rules 13 and 14, `outOfOrder` and `lagTooShort`: a step starts no earlier than the one before has finished, and after the stated wait. Counts minutes. */
export const order: RuleCheck = (facts) =>
  facts.stepTasks.flatMap((_, green) => pairsOf(facts, green).flatMap((pair) => judge(facts, pair)))
