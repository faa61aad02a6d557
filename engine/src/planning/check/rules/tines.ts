import { stepOf } from '../facts.ts'
import { findingOf, type RuleCheck } from '../finding.ts'
import { setsBy, SLACK_SETS } from '../tine-stock.ts'

/** Rule 10, `tinesGone`: the sets that coverings begun by any moment wear out are no more than were there by then, per kind of tine. Counts the sets missing at each covering. */
export const tinesGone: RuleCheck = (facts) => {
  const { tines } = facts.problem
  if (tines === undefined) return []
  const worn = new Map<number, number>()
  return facts.timed.flatMap((task) => {
    const use = stepOf(facts, task)?.tines
    if (use === undefined) return []
    const total = (worn.get(use.kind) ?? 0) + use.sets
    worn.set(use.kind, total)
    const by = total - setsBy(tines, use.kind, task.startMin)
    return by > SLACK_SETS ? [findingOf('tinesGone', task, by)] : []
  })
}
