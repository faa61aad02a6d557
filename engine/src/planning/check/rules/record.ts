import type { Facts, TaskFact } from '../facts.ts'
import { greenId } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { SLACK_MIN } from '../spans.ts'

/** One spell of work as it was recorded, on a step of the problem; null for a moment that was not recorded. */
export type ToldSpell = {
  readonly green: number
  readonly step: number
  readonly startMin: number | null
  readonly endMin: number | null
}

const offMin = (task: TaskFact, told: ToldSpell): number =>
  Math.max(
    told.startMin === null ? 0 : Math.abs(task.startMin - told.startMin),
    told.endMin === null ? 0 : Math.abs(task.finishMin - told.endMin),
  )

/** Rule 24, `againstRecord`: what was recorded stands in the plan as it was recorded. Counts minutes, or 1 where the plan does not have the step. */
export const againstRecord = (facts: Facts, told: readonly ToldSpell[]): readonly Finding[] =>
  told.flatMap((spell): readonly Finding[] => {
    const task = facts.stepTasks[spell.green]?.[spell.step]
    const green = greenId(facts, spell.green)
    if (task === undefined)
      return [{ rule: 'againstRecord', green, atMin: spell.startMin ?? spell.endMin, by: 1, tasks: [] }]
    const by = offMin(task, spell)
    return by > SLACK_MIN
      ? [{ rule: 'againstRecord', green, atMin: task.startMin, by, tasks: [task.id] }]
      : []
  })
