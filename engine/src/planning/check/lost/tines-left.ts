import { NEVER } from '../../spans.ts'
import type { Facts } from '../facts.ts'
import { stepOf } from '../facts.ts'

/** Sets under this are rounding. */
const SLACK_SETS = 1e-4

/** First minute, now or later, by which so many sets of a kind can be had by whoever takes all that coverings begun before now have left; NEVER where that is never. */
export const tinesFrom = (facts: Facts, nowMin: number, kind: number, sets: number): number => {
  const entries = (facts.problem.tines ?? []).filter((entry) => entry.kind === kind)
  const worn = facts.timed.reduce((sum, task) => {
    const use = task.startMin < nowMin ? stepOf(facts, task)?.tines : undefined
    return use?.kind === kind ? sum + use.sets : sum
  }, 0)
  const deliveries = entries.flatMap((entry) => entry.deliveries)
  const come = (minute: number): number =>
    deliveries.reduce(
      (sum, { atMin, sets: more }) => (atMin <= minute ? sum + more : sum),
      entries.reduce((sum, entry) => sum + entry.sets, -worn),
    )
  const moments = deliveries.map(({ atMin }) => atMin).filter((minute) => minute > nowMin)
  return (
    [nowMin, ...moments.toSorted((a, b) => a - b)].find((minute) => come(minute) + SLACK_SETS >= sets) ??
    NEVER
  )
}
