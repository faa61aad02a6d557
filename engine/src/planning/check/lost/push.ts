import { NEVER } from '../../spans.ts'
import type { Drying, Link, Row } from './row.ts'

/** What is still open, task by task and pair by pair; narrowed in place. */
export type Open = {
  readonly soonStart: Int32Array
  readonly lateStart: Int32Array
  readonly soonEnd: Int32Array
  readonly lateEnd: Int32Array
  /** The options left of each task, as bits. */
  readonly options: Int32Array
  /** Which of each pair is first: 1, 2, or 0 where that is open. */
  readonly first: Uint8Array
  /** Whether a bound was moved. */
  moved: boolean
}

/** All choices open. */
export const allOpen = ({ tasks, pairs }: Row): Open => ({
  soonStart: new Int32Array(tasks.length),
  lateStart: new Int32Array(tasks.length).fill(NEVER),
  soonEnd: new Int32Array(tasks.length),
  lateEnd: new Int32Array(tasks.length).fill(NEVER),
  options: Int32Array.from(tasks, ({ options }) => (1 << options.length) - 1),
  first: new Uint8Array(pairs.length),
  moved: false,
})

export const copyOf = (open: Open): Open => ({
  soonStart: open.soonStart.slice(),
  lateStart: open.lateStart.slice(),
  soonEnd: open.soonEnd.slice(),
  lateEnd: open.lateEnd.slice(),
  options: open.options.slice(),
  first: open.first.slice(),
  moved: false,
})

/** Takes away the options of a task that no longer fit, and draws its bounds in to what the others allow; false where none is left. */
const settle = (row: Row, open: Open, task: number): boolean => {
  const all = row.tasks[task]?.options ?? []
  const [fromMin, endedFrom] = [open.soonStart[task] ?? 0, open.soonEnd[task] ?? 0]
  const [begunBy, byMin] = [open.lateStart[task] ?? 0, open.lateEnd[task] ?? 0]
  let left = 0
  let soonStart = NEVER
  let lateStart = -1
  let soonEnd = NEVER
  let lateEnd = -1
  for (let at = 0; at < all.length; at++) {
    const option = all[at]
    if (option === undefined || ((open.options[task] ?? 0) & (1 << at)) === 0) continue
    const { minutes, earliestStart, latestEnd } = option
    const start = Math.max(fromMin, earliestStart, endedFrom - minutes)
    const end = Math.min(byMin, latestEnd, begunBy + minutes)
    if (start + minutes > end) continue
    left |= 1 << at
    soonStart = Math.min(soonStart, start)
    soonEnd = Math.min(soonEnd, start + minutes)
    lateStart = Math.max(lateStart, end - minutes)
    lateEnd = Math.max(lateEnd, end)
  }
  open.options[task] = left
  open.soonStart[task] = soonStart
  open.soonEnd[task] = soonEnd
  open.lateStart[task] = lateStart
  open.lateEnd[task] = lateEnd
  return left !== 0
}

/** Last minute of a range by which the sand must lie to be dry by then. `dryMin` never falls, so halving finds it. */
const lastDry = (
  dryMin: (dressedMin: number) => number,
  range: readonly [number, number],
  by: number,
): number => {
  let [low, high] = range
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (dryMin(middle) <= by) low = middle
    else high = middle - 1
  }
  return low
}

/** A task begins no sooner than a minute; like all that follow, false where it has no time left for that. */
const begin = (row: Row, open: Open, task: number, fromMin: number): boolean => {
  if (fromMin <= (open.soonStart[task] ?? 0)) return true
  open.moved = true
  open.soonStart[task] = fromMin
  return settle(row, open, task)
}

/** A task ends by a minute. */
const finish = (row: Row, open: Open, task: number, byMin: number): boolean => {
  if (byMin >= (open.lateEnd[task] ?? 0)) return true
  open.moved = true
  open.lateEnd[task] = byMin
  return settle(row, open, task)
}

const follow = (row: Row, open: Open, { ahead, behind, gapMin }: Link): boolean =>
  begin(row, open, behind, (open.soonEnd[ahead] ?? 0) + gapMin) &&
  finish(row, open, ahead, (open.lateStart[behind] ?? 0) - gapMin)

const dry = (row: Row, open: Open, { dress, behind, dryMin }: Drying): boolean => {
  const [soon, late] = [open.soonEnd[dress] ?? 0, open.lateEnd[dress] ?? 0]
  if (!begin(row, open, behind, dryMin(soon))) return false
  const by = open.lateStart[behind] ?? 0
  return dryMin(late) <= by || finish(row, open, dress, lastDry(dryMin, [soon, late], by))
}

/** Two steps that are bound to the same machine: where only one of them can be first, the other follows. */
const keepApart = (row: Row, open: Open, index: number): boolean => {
  const pair = row.pairs[index]
  if (pair === undefined) return true
  const { one, other, between, back } = pair
  if (open.options[one] !== pair.oneOn || open.options[other] !== pair.otherOn) return true
  const { soonEnd, lateStart, first } = open
  const canOne = first[index] !== 2 && (soonEnd[one] ?? 0) + between <= (lateStart[other] ?? 0)
  const canOther = first[index] !== 1 && (soonEnd[other] ?? 0) + back <= (lateStart[one] ?? 0)
  if (canOne === canOther) return canOne
  return canOne
    ? follow(row, open, { ahead: one, behind: other, gapMin: between })
    : follow(row, open, { ahead: other, behind: one, gapMin: back })
}

/** Lets chains, drying and the order on machines push until nothing moves. */
export const push = (row: Row, open: Open): boolean => {
  for (let task = 0; task < row.tasks.length; task++) if (!settle(row, open, task)) return false
  do {
    open.moved = false
    for (const link of row.links) if (!follow(row, open, link)) return false
    for (const drying of row.dryings) if (!dry(row, open, drying)) return false
    for (let index = 0; index < row.pairs.length; index++) if (!keepApart(row, open, index)) return false
  } while (open.moved)
  return true
}
