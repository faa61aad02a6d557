import type { Problem } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { BoundBy } from './bound-by.ts'
import { boundFrameOf, type BoundFrame } from './bound-frame.ts'
import { boundGroundOf, type BoundFor } from './bound-ground.ts'
import { fitsInSequence } from './in-sequence.ts'
import { canHold, mostByWindow, needOfOpenGreens, needOfResource, type WindowNeed } from './in-windows.ts'
import { resourcesOf, type Resource } from './resource.ts'
import { mostBySand, sandBound } from './sand-supply.ts'
import { soonestFinish } from './time-tables.ts'

/** What no plan of these greens can better. */
export type LowerBound = {
  /** Last minute of any task at the soonest, whatever the plan; null where no plan can finish them all within the horizon. */
  readonly finishMin: number | null
  readonly by: BoundBy
  /** Greens of the course that every plan leaves unfinished, at least; excluded ones and those not asked for count. */
  readonly unfinishedGreens: number
}

/** A part of the bound: whether it lets all be over by a minute. Once it does, it does so for every later one. */
type Part = { readonly by: (untilMin: number) => BoundBy; readonly allows: (untilMin: number) => boolean }

const windowsPart = (frame: BoundFrame, needs: readonly WindowNeed[]): Part => {
  const most = (untilMin: number): readonly number[] => {
    const all = needs.map((need) => mostByWindow(need, untilMin))
    return frame.ground.windows.map((_, w) => Math.min(...all.map((counts) => counts[w] ?? 0)))
  }
  const waiting = frame.ground.greens.filter(({ isOpen }) => !isOpen).length
  return {
    allows: (untilMin) => most(untilMin).reduce((sum, count) => sum + count, 0) >= waiting,
    by: (untilMin) => ({ part: 'windows', greens: waiting, mostByWindow: [...most(untilMin - 1)] }),
  }
}

const workOf = ({ demands }: Resource): number =>
  demands.reduce((sum, { workMin, leadMin }) => sum + workMin + leadMin, 0)

type Needs = {
  readonly resources: readonly Resource[]
  /** By resource. */
  readonly needs: readonly WindowNeed[]
  readonly openGreens: WindowNeed
}

const needsOf = (frame: BoundFrame): Needs => {
  const resources = resourcesOf(frame.ground)
  const needs = resources.map((resource) => needOfResource(frame, resource))
  return { resources, needs, openGreens: needOfOpenGreens(frame) }
}

const partsOf = (frame: BoundFrame, { resources, needs, openGreens }: Needs): readonly Part[] => {
  const fits = (need: WindowNeed) => (untilMin: number) => canHold(need, untilMin)
  const byResource = (resource: Resource) => (): BoundBy => ({
    part: 'bottleneck',
    resource: resource.name,
    workMin: workOf(resource),
  })
  return [
    ...resources.map((resource, index): Part => {
      const need = needs[index]
      return { by: byResource(resource), allows: need === undefined ? () => true : fits(need) }
    }),
    ...resources.map((resource): Part => ({
      by: byResource(resource),
      allows: (untilMin) => fitsInSequence(frame, resource, untilMin),
    })),
    {
      by: () => ({
        part: 'openGreens',
        cap: openGreens.lanes,
        workMin: openGreens.minutes.reduce((sum, minutes) => sum + minutes, 0),
      }),
      allows: fits(openGreens),
    },
    windowsPart(frame, [...needs, openGreens]),
  ]
}

/** The first minute after `from` that a part allows; NEVER where it allows none within the horizon. */
const firstAllowed = (part: Part, from: number, horizonMin: number): number => {
  if (!part.allows(horizonMin)) return NEVER
  let [low, high] = [from, horizonMin]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (part.allows(middle)) high = middle
    else low = middle
  }
  return high
}

type Found = { finishMin: number; by: BoundBy }

const startOf = (frame: BoundFrame): Found => {
  const { ground, soonest } = frame
  let found: Found = { finishMin: ground.standing.finishMin, by: { part: 'standing' } }
  for (const [index, { green }] of ground.greens.entries()) {
    const finishMin = soonestFinish(soonest, index)
    if (finishMin > found.finishMin) found = { finishMin, by: { part: 'chain', green: green.id } }
  }
  const sand = sandBound(ground)
  return sand.finishMin > found.finishMin
    ? { finishMin: sand.finishMin, by: { part: 'sand', kind: sand.kind } }
    : found
}

/** Most of the greens that any plan can finish within the horizon. */
const mostFinished = (frame: BoundFrame, needs: readonly WindowNeed[]): number => {
  const { ground, soonest } = frame
  const { horizonMin } = ground.problem
  const open = ground.greens.filter(({ isOpen }) => isOpen).length
  const fitting = ground.greens.filter((_, index) => soonestFinish(soonest, index) < NEVER).length
  const counts = needs.map((need) => mostByWindow(need, horizonMin))
  const inWindows = ground.windows.reduce(
    (sum, _, w) => sum + Math.min(...counts.map((count) => count[w] ?? 0)),
    open,
  )
  return Math.min(fitting, inWindows, mostBySand(ground))
}

/**
 * A lower bound on the last finishing minute of all greens (or those wanted), and on the greens that are left unfinished. Every part is a
 * relaxation of the rules in `docs/planning.md`, so no plan without a fault finishes sooner:
 * - the longest chain over calendars with waits, drying and the finish rule;
 * - machines and people, each with all that only they can do, their ways and fillings: preemptive, with heads and tails (Carlier 1982, An algorithm for
 *   the one-machine sequencing problem, European Journal of Operational Research 11; Jackson 1955), and window by window (energetic);
 * - how many greens can be opened and finished in each dry stretch by the tightest of them, and by the cap on greens in work at once;
 * - sand that has not come yet.
 * What stands already (`problem.committed`) is held to.
 */
export const lowerBound = (problem: Problem, wanted: BoundFor = {}): LowerBound => {
  const frame = boundFrameOf(boundGroundOf(problem, wanted))
  const all = needsOf(frame)
  let found = startOf(frame)
  for (const part of partsOf(frame, all)) {
    if (found.finishMin > problem.horizonMin) break
    if (part.allows(found.finishMin)) continue
    const finishMin = firstAllowed(part, found.finishMin, problem.horizonMin)
    found = { finishMin, by: part.by(Math.min(finishMin, problem.horizonMin)) }
  }
  return {
    finishMin: found.finishMin > problem.horizonMin ? null : found.finishMin,
    by: found.by,
    unfinishedGreens:
      problem.greens.length + problem.excluded.length - mostFinished(frame, [...all.needs, all.openGreens]),
  }
}
