import type { Open } from './push.ts'
import type { Pair, Row } from './row.ts'

/** Narrows what is open by one choice. Of the choices of a clash one holds in every schedule. */
export type Choice = (open: Open) => void

/** How much time each order of a pair would leave. */
const roomsOf = (
  { soonEnd, lateStart }: Open,
  { one, other, between, back }: Pair,
): readonly [number, number] => [
  (lateStart[other] ?? 0) - (soonEnd[one] ?? 0) - between,
  (lateStart[one] ?? 0) - (soonEnd[other] ?? 0) - back,
]

/** Whether the two would be in each other's way at their soonest. */
const isClash = ({ soonStart, soonEnd }: Open, { one, other, between, back }: Pair): boolean =>
  (soonEnd[one] ?? 0) + between > (soonStart[other] ?? 0) &&
  (soonEnd[other] ?? 0) + back > (soonStart[one] ?? 0)

/** The pair with the least room of those that clash at their soonest, and that the test lets through; -1 where there is none. */
const tightest = (row: Row, open: Open, isMeant: (pair: Pair, index: number) => boolean): number => {
  let best = -1
  let least = Infinity
  for (let index = 0; index < row.pairs.length; index++) {
    const pair = row.pairs[index]
    if (pair === undefined || !isMeant(pair, index) || !isClash(open, pair)) continue
    const [one, other] = roomsOf(open, pair)
    if (one + other >= least) continue
    least = one + other
    best = index
  }
  return best
}

/** The tightest clash of two steps that are bound to the same machine: either may be first, that with more room tried first. Null where there is none. */
export const clashOnMachine = (row: Row, open: Open): readonly Choice[] | null => {
  const { options, first } = open
  const index = tightest(
    row,
    open,
    ({ one, other, oneOn, otherOn }, at) =>
      first[at] === 0 && options[one] === oneOn && options[other] === otherOn,
  )
  const pair = row.pairs[index]
  if (pair === undefined) return null
  const [one, other] = roomsOf(open, pair)
  const choices = [1, 2].map((which): Choice => (next) => {
    next.first[index] = which
  })
  return one >= other ? choices : choices.reverse()
}

/** The tightest clash of two steps that may be on the same machine, one of them also on another: that one is on this machine or not. Null where there is none. */
export const openMachine = (row: Row, open: Open): readonly Choice[] | null => {
  const { options } = open
  const left = (task: number): number => options[task] ?? 0
  const index = tightest(
    row,
    open,
    ({ one, other, oneOn, otherOn }) =>
      (left(one) & oneOn) !== 0 &&
      (left(other) & otherOn) !== 0 &&
      (left(one) !== oneOn || left(other) !== otherOn),
  )
  const pair = row.pairs[index]
  if (pair === undefined) return null
  const [task, on] = left(pair.one) === pair.oneOn ? [pair.other, pair.otherOn] : [pair.one, pair.oneOn]
  return [on, left(task) & ~on].map((mask): Choice => (next) => {
    next.options[task] = mask
  })
}
