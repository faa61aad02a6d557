import type { Facts } from '../facts.ts'
import type { Finding } from '../finding.ts'

/**
 * Rule 22, `notAccountedFor`: each green of the course is planned or listed as unplanned, not both, and listed once. A green planned in part
 * is a matter of `missingOperation`. Counts 1, or the rows too many.
 */
export const notAccountedFor = (facts: Facts, unplanned: readonly string[]): readonly Finding[] =>
  facts.compiled.greenIds.flatMap((id, green) => {
    const listed = unplanned.filter((one) => one === id).length + (facts.planned.has(green) ? 1 : 0)
    if (listed === 1) return []
    const tasks = facts.stepTasks[green]?.flatMap((task) => task?.id ?? []) ?? []
    return [{ rule: 'notAccountedFor', green: id, atMin: null, by: Math.abs(listed - 1), tasks }]
  })
