import { dryFrom } from '../dried.ts'
import type { Span } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { BoundFrame } from './bound-frame.ts'
import type { BoundGreen } from './bound-ground.ts'
import type { Resource } from './resource.ts'
import type { ByWindow } from './time-tables.ts'

/** A need of each green that is met in the window in which it is opened, and what each window has of it. */
export type WindowNeed = {
  /** Greens that have yet to be opened. */
  readonly greens: readonly number[]
  /** By those greens. */
  readonly minutes: readonly number[]
  /** Lanes that no green leaves half-way: the minutes of a lane are not shared. 1 where all minutes count together. */
  readonly lanes: number
  /** Minutes of one lane by window when all is to be over by a minute. */
  readonly room: (untilMin: number) => readonly number[]
}

const windowedDemands = (green: BoundGreen, { demands }: Resource, index: number) =>
  demands.filter(
    (demand) => demand.green === index && demand.step >= green.marks.open && demand.step <= green.windowed,
  )

/** From the soonest start (with its lead) to the latest finish of any of these steps in a window; empty where none fits. */
const reachIn = (
  soonest: ByWindow,
  latest: ByWindow,
  resource: Resource,
  window: number,
  steps: Resource['demands'],
): Span => {
  let start = NEVER
  let end = -1
  for (const { green, step, leadMin } of steps) {
    const last = latest[green]?.[window]
    const first = soonest[green]?.[window]
    if (last == null || first == null) continue
    start = Math.min(start, (first.starts[step] ?? NEVER) - (resource.looseLeads ? 0 : leadMin))
    end = Math.max(end, last.ends[step] ?? -1)
  }
  return { start, end: Math.max(start, end) }
}

/** What a resource has to do for each green in its window. */
export const needOfResource = (frame: BoundFrame, resource: Resource): WindowNeed => {
  const { ground } = frame
  const greens = ground.greens.flatMap((green, index) => (green.isOpen ? [] : [index]))
  const demands = greens.map((index) => {
    const green = ground.greens[index]
    return green === undefined ? [] : windowedDemands(green, resource, index)
  })
  const steps = demands.flat()
  const early = resource.looseLeads && steps.some(({ leadMin }) => leadMin > 0)
  return {
    greens,
    lanes: 1,
    minutes: demands.map((list) => list.reduce((sum, { workMin, leadMin }) => sum + workMin + leadMin, 0)),
    room: (untilMin) => {
      const latest = frame.latest(untilMin)
      return ground.windows.map((window, w) => {
        const { start, end } = reachIn(frame.soonest, latest, resource, w, steps)
        if (end <= start) return 0
        const day = ground.problem.days.findLast(({ startMin }) => startMin <= window.start)
        return resource.capacity.between(early ? (day?.startMin ?? 0) : start, end)
      })
    },
  }
}

/** Least minutes that sand needs to dry, whenever in the windows it is laid. */
const leastDryMin = (frame: BoundFrame, needMm: number): number => {
  const { driedMm } = frame.ground.problem
  let least = NEVER
  for (const { start, end } of frame.ground.windows)
    for (let min = start; min < end; min++)
      least = Math.min(least, dryFrom(driedMm, min, needMm - 1e-6) - min)
  return least
}

/** Least minutes from the opening of a green to its finish. */
const leastInWorkMin = (green: BoundGreen, dryMin: (needMm: number) => number): number =>
  green.steps
    .slice(green.marks.open, green.windowed + 1)
    .reduce((sum, { step, choices, refill }, index, steps) => {
      const work = choices.length === 0 ? 0 : Math.min(...choices.map(({ minutes }) => minutes))
      const wait = index === 0 ? 0 : step.lagMin
      // Sand dries from the last load on: with other steps in between, they may be what it waits for.
      const fresh = steps[index - 1]?.step.operation === 'dress' && step.dryNeedMm > 0
      // One dresser alone is away between two loads.
      const away = refill !== null && choices.length === 1 ? refill.minutes : 0
      return sum + work + Math.max(wait, away, fresh ? dryMin(step.dryNeedMm) : 0)
    }, 0)

/** The cap on greens in work at once, as lanes that greens pass through one behind the other. */
export const needOfOpenGreens = (frame: BoundFrame): WindowNeed => {
  const { ground } = frame
  const known = new Map<number, number>()
  const dryMin = (needMm: number): number => {
    const before = known.get(needMm) ?? leastDryMin(frame, needMm)
    known.set(needMm, before)
    return before
  }
  const waiting = ground.greens.flatMap((green, index) => (green.isOpen ? [] : [{ green, index }]))
  return {
    greens: waiting.map(({ index }) => index),
    minutes: waiting.map(({ green }) => leastInWorkMin(green, dryMin)),
    lanes: ground.problem.settings.openGreensCap,
    room: (untilMin) => {
      const latest = frame.latest(untilMin)
      return ground.windows.map((_, w) => {
        let start = NEVER
        let end = -1
        for (const { green, index } of waiting) {
          const last = latest[index]?.[w]
          const first = frame.soonest[index]?.[w]
          if (last == null || first == null) continue
          start = Math.min(start, first.starts[green.marks.open] ?? NEVER)
          end = Math.max(end, last.ends[green.windowed] ?? -1)
        }
        return Math.max(0, end - start)
      })
    },
  }
}

/** How many of the least needs fit a room. */
const mostIn = (sorted: readonly number[], room: number): number => {
  let left = room
  let count = 0
  while (count < sorted.length && left >= (sorted[count] ?? 0)) {
    left -= sorted[count] ?? 0
    count++
  }
  return count
}

/** Most greens by window, by one need. */
export const mostByWindow = (need: WindowNeed, untilMin: number): readonly number[] => {
  const sorted = need.minutes.toSorted((a, b) => a - b)
  return need.room(untilMin).map((room) => {
    const inLane = mostIn(sorted, room)
    return Math.min(inLane * need.lanes, mostIn(sorted, room * need.lanes))
  })
}

/**
 * Whether the rooms can hold all greens, as far as sums tell: all minutes together; and, since a green is not parted, with more than k greens for each lane of each
 * window some lane has k + 1 of them, which are no less than the k + 1 least of the kL + 1 greatest (bounds of Martello and Toth 1990, Knapsack Problems, chapter 8).
 */
export const canHold = (need: WindowNeed, untilMin: number): boolean => {
  const rooms = need.room(untilMin).filter((room) => room > 0)
  const sum = need.minutes.reduce((more, minutes) => more + minutes, 0)
  if (sum > rooms.reduce((more, room) => more + room * need.lanes, 0)) return false
  const lanes = rooms.length * need.lanes
  const widest = Math.max(0, ...rooms)
  const falling = need.minutes.filter((minutes) => minutes > 0).toSorted((a, b) => b - a)
  for (let k = 1; lanes > 0 && k * lanes < falling.length; k++) {
    const least = falling.slice(k * lanes - k, k * lanes + 1)
    if (least.reduce((more, minutes) => more + minutes, 0) > widest) return false
  }
  return true
}
