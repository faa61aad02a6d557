import { NEVER } from '../../spans.ts'
import type { Facts } from '../facts.ts'
import { stepOf } from '../facts.ts'
import { setsBy, SLACK_SETS } from '../tine-stock.ts'

/** First minute, now or later, by which so many sets of a kind can be had by whoever takes all that coverings begun before now have left; NEVER where that is never. */
export const tinesFrom = (facts: Facts, nowMin: number, kind: number, sets: number): number => {
  const entries = (facts.problem.tines ?? []).filter((entry) => entry.kind === kind)
  const worn = facts.timed.reduce((sum, task) => {
    const use = task.startMin < nowMin ? stepOf(facts, task)?.tines : undefined
    return use?.kind === kind ? sum + use.sets : sum
  }, 0)
  const moments = entries
    .flatMap(({ deliveries }) => deliveries.map(({ atMin }) => atMin))
    .filter((minute) => minute > nowMin)
    .toSorted((a, b) => a - b)
  return (
    [nowMin, ...moments].find((minute) => setsBy(entries, kind, minute) - worn + SLACK_SETS >= sets) ?? NEVER
  )
}
