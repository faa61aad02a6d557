import { dryFrom } from '../../dried.ts'
import { SHED } from '../compile.ts'
import type { LeftStep, LostGround } from './left-of-green.ts'

/** Most choices looked at before the question is left open: then the greens count as savable. */
const MOST_NODES = 600

/** Two steps of different greens that the same single machine does: which is first? */
type Pair = { readonly one: number; readonly other: number; readonly between: number; readonly back: number }

/** Steps of several greens in a row, with what each waits for. */
type Row = {
  readonly minutes: readonly number[]
  /** Index of the step before it in its chain; -1 for the first. */
  readonly before: readonly number[]
  readonly waitMin: readonly number[]
  /** Index of the dress that must dry before it, and the water; -1 where nothing has to. */
  readonly dryAfter: readonly number[]
  readonly dryNeedMm: readonly number[]
  readonly pairs: readonly Pair[]
}

/** Minutes between a machine's work on one green and on the next: the way, and for sand the way by the bay with the filling. */
const betweenMin = ({ facts, doers }: LostGround, from: LeftStep, to: LeftStep): number => {
  const { problem } = facts
  const [doer] = doers(to.step)
  const own = problem.machines[doer?.machine ?? -1]
  const placeOf = (green: number): number => problem.greens[green]?.place ?? SHED
  const way = (a: number, b: number): number => own?.travelMin[a * problem.places.length + b] ?? 0
  const bay = problem.stores.find(({ kind }) => kind === problem.greens[to.green]?.sand.kind)?.place
  const fetches = to.step.load !== null && to.step.sandT > 0 && bay !== undefined
  return fetches
    ? way(placeOf(from.green), bay) + (own?.loadMin ?? 0) + way(bay, placeOf(to.green))
    : way(placeOf(from.green), placeOf(to.green))
}

const machineOf = ({ doers }: LostGround, { step }: LeftStep): number => {
  const all = doers(step)
  return all.length === 1 ? (all[0]?.machine ?? -1) : -1
}

const rowOf = (ground: LostGround, steps: readonly LeftStep[]): Row => {
  const pairs: Pair[] = []
  const machines = steps.map((step) => machineOf(ground, step))
  for (const [one, a] of steps.entries())
    for (let other = one + 1; other < steps.length; other++) {
      const b = steps[other]
      if (
        b === undefined ||
        b.green === a.green ||
        machines[one] !== machines[other] ||
        (machines[one] ?? -1) < 0
      )
        continue
      pairs.push({ one, other, between: betweenMin(ground, a, b), back: betweenMin(ground, b, a) })
    }
  const before = steps.map((step, index) => (steps[index - 1]?.green === step.green ? index - 1 : -1))
  return {
    minutes: steps.map(({ minutes }) => minutes),
    before,
    waitMin: steps.map(({ waitMin }) => waitMin),
    dryAfter: steps.map((step, index) =>
      step.step.dryNeedMm > 0
        ? steps.findLastIndex(
            (other, at) => at < index && other.green === step.green && other.operation === 'dress',
          )
        : -1,
    ),
    dryNeedMm: steps.map(({ step }) => step.dryNeedMm),
    pairs,
  }
}

/** Earliest and latest starts, narrowed in place. */
type Windows = { readonly earliest: Float64Array; readonly latest: Float64Array }

/** Lets the chains and the machines push; false where some step has no start left. `first` says of each pair which is first: 1, 2, or 0 where it is open. */
const push = (row: Row, { earliest, latest }: Windows, first: Uint8Array, driedMm: Float64Array): boolean => {
  const soon = (step: number): number => earliest[step] ?? 0
  const late = (step: number): number => latest[step] ?? 0
  const minutes = (step: number): number => row.minutes[step] ?? 0
  let moved = true
  const follow = (ahead: number, behind: number, gap: number): void => {
    const from = soon(ahead) + minutes(ahead) + gap
    const until = late(behind) - minutes(ahead) - gap
    if (from > soon(behind)) {
      earliest[behind] = from
      moved = true
    }
    if (until < late(ahead)) {
      latest[ahead] = until
      moved = true
    }
  }
  while (moved) {
    moved = false
    for (let step = 0; step < row.minutes.length; step++) {
      const before = row.before[step] ?? -1
      if (before >= 0) follow(before, step, row.waitMin[step] ?? 0)
      const dress = row.dryAfter[step] ?? -1
      if (dress >= 0) {
        const dry = dryFrom(driedMm, soon(dress) + minutes(dress), row.dryNeedMm[step] ?? 0)
        if (dry > soon(step)) {
          earliest[step] = dry
          moved = true
        }
      }
      if (soon(step) > late(step)) return false
    }
    for (const [index, { one, other, between, back }] of row.pairs.entries()) {
      const canOne = first[index] !== 2 && soon(one) + minutes(one) + between <= late(other)
      const canOther = first[index] !== 1 && soon(other) + minutes(other) + back <= late(one)
      if (!canOne && !canOther) return false
      if (!canOther) follow(one, other, between)
      else if (!canOne) follow(other, one, back)
    }
  }
  return true
}

/** The open pair with the least room; -1 where all are settled. */
const tightest = (row: Row, { earliest, latest }: Windows, first: Uint8Array): number => {
  let best = -1
  let least = Infinity
  for (const [index, { one, other, between, back }] of row.pairs.entries()) {
    if (first[index] !== 0) continue
    const roomOne = (latest[other] ?? 0) - (earliest[one] ?? 0) - (row.minutes[one] ?? 0) - between
    const roomOther = (latest[one] ?? 0) - (earliest[other] ?? 0) - (row.minutes[other] ?? 0) - back
    if (roomOne < 0 || roomOther < 0 || roomOne + roomOther >= least) continue
    least = roomOne + roomOther
    best = index
  }
  return best
}

/**
 * Whether the steps of several greens could be put in a sequence on the machines that only one of a kind can do, each inside its window; people and other work left out. Branch and bound over the order of pairs
 * (immediate selection after Carlier and Pinson 1989, from memory). True also where the question stays open.
 */
export const fitsInSequence = (ground: LostGround, steps: readonly LeftStep[]): boolean => {
  const row = rowOf(ground, steps)
  const { driedMm } = ground.facts.problem
  let nodes = 0
  const search = (windows: Windows, first: Uint8Array): boolean => {
    nodes++
    if (!push(row, windows, first, driedMm)) return false
    if (nodes > MOST_NODES) return true
    const pair = tightest(row, windows, first)
    if (pair < 0) return true
    return [1, 2].some((which) => {
      const next = first.slice()
      next[pair] = which
      return search({ earliest: windows.earliest.slice(), latest: windows.latest.slice() }, next)
    })
  }
  return search(
    {
      earliest: Float64Array.from(steps, ({ earliestStart }) => earliestStart),
      latest: Float64Array.from(steps, ({ latestEnd, minutes }) => latestEnd - minutes),
    },
    new Uint8Array(row.pairs.length),
  )
}
