import type { Facts, TaskFact } from '../facts.ts'
import { findingOf, type RuleCheck } from '../finding.ts'

/** Water is compared to a millionth of a millimetre: interpolated sums are not exact. */
const SLACK_MM = 1e-6

/** Water gone since the origin at any minute, mm: straight between full hours, level beyond the ends. */
export const driedAtMm = (driedMm: Float64Array, min: number): number => {
  const hour = Math.min(Math.max(min / 60, 0), driedMm.length - 1)
  const before = driedMm[Math.floor(hour)] ?? 0
  const after = driedMm[Math.ceil(hour)] ?? before
  return before + (after - before) * (hour - Math.floor(hour))
}

/** The first whole minute by which so much water has gone, or the horizon's end where it never goes. */
const dryFromMin = (driedMm: Float64Array, goneMm: number): number => {
  const hour = driedMm.findIndex((mm) => mm >= goneMm - SLACK_MM)
  if (hour <= 0) return hour < 0 ? (driedMm.length - 1) * 60 : 0
  for (let min = (hour - 1) * 60; min < hour * 60; min += 1) {
    if (driedAtMm(driedMm, min) >= goneMm - SLACK_MM) return min
  }
  return hour * 60
}

const lastDressBefore = (steps: readonly (TaskFact | undefined)[], index: number): TaskFact | undefined =>
  steps.slice(0, index).findLast((task) => task?.kind === 'dress' && task.timed)

const judge = ({ problem }: Facts, green: number, steps: readonly (TaskFact | undefined)[]) =>
  steps.flatMap((task, index) => {
    const needMm = problem.greens[green]?.steps[index]?.dryNeedMm ?? 0
    const dressed = lastDressBefore(steps, index)
    if (needMm <= 0 || task === undefined || !task.timed || dressed === undefined) return []
    const dryMm = driedAtMm(problem.driedMm, dressed.finishMin) + needMm
    if (driedAtMm(problem.driedMm, task.startMin) >= dryMm - SLACK_MM) return []
    const by = Math.max(1, dryFromMin(problem.driedMm, dryMm) - task.startMin)
    return [{ ...findingOf('draggedBeforeDry', task, by), tasks: [dressed.id, task.id] }]
  })

/** Rule 14, `draggedBeforeDry`: enough water has left the sand since the last dress load. Counts minutes too early, to the end of the horizon where it never dries. */
export const draggedBeforeDry: RuleCheck = (facts) =>
  facts.stepTasks.flatMap((steps, green) => judge(facts, green, steps))
