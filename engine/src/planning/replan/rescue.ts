import { dryFrom } from '../dried.ts'
import type { Problem, ProblemStep } from '../problem.ts'
import { randomOf } from '../search/random.ts'
import { NEVER } from '../spans.ts'
import { bayOf, copyField, type Field } from './field.ts'
import { coursesOf, isInTime, limitsOf } from './judge-field.ts'
import { chainFrom } from './lay.ts'
import { bestOffer, take, type Offer, type Wanted } from './place.ts'
import { inWork, type Broken } from './repair.ts'

/** Whoever is free takes it: only what would start at the same minute stays in the same hands. */
const ANYBODY = { machineMin: 1, personMin: 1 } as const

/** Minutes by which a green that is given up stands behind all others. */
const BEHIND_MIN = 1_000_000

/** Longest wait for sand that is reckoned with, minutes. */
const MOST_DRYING_MIN = 240

/** What is needed to work greens off: the problem, all that stands, who had which step, and the greens. */
export type WorkedOff = Pick<Broken, 'problem' | 'marks' | 'stood' | 'old' | 'opened'>

/** Least minutes of the trip to the bay and back before a load that follows another one, where the one dresser must fetch it. */
const refillMin = (
  problem: Problem,
  green: number,
  step: ProblemStep,
  before: ProblemStep | undefined,
): number => {
  const own = problem.greens[green]
  if (own === undefined || step.load === null || step.sandT <= 0 || before?.load == null) return 0
  const able = problem.machines.filter(({ id }) => step.minutesByMachine.has(id))
  const [dresser] = able
  if (dresser === undefined || able.length > 1) return 0
  const places = problem.places.length
  const bay = bayOf(problem, own.sand.kind)
  const way = (from: number, to: number): number => dresser.travelMin[from * places + to] ?? 0
  return way(own.place, bay) + dresser.loadMin + way(bay, own.place)
}

/** By green, by step: minutes from the start of the step to the finish of the green at the very best, with the drying of this hour and the trips of a lone dresser. */
export const tailsOf = ({ problem, marks, stood }: WorkedOff): readonly (readonly number[])[] =>
  problem.greens.map(({ steps }, green) => {
    const finish = marks[green]?.finish ?? steps.length - 1
    const tails = steps.map(() => 0)
    for (let step = finish; step >= 0; step--) {
      const own = steps[step]
      if (own === undefined) continue
      const dryMin =
        own.dryNeedMm > 0
          ? Math.min(MOST_DRYING_MIN, dryFrom(problem.driedMm, stood.nowMin, own.dryNeedMm) - stood.nowMin)
          : 0
      const least = Math.min(...own.minutesByMachine.values())
      const wait = Math.max(own.lagMin, refillMin(problem, green, own, steps[step - 1]))
      tails[step] = (tails[step + 1] ?? 0) + least + wait + dryMin
    }
    return tails
  })

type Bid = {
  readonly green: number
  readonly wanted: Wanted
  readonly offer: Offer
  readonly latestStart: number
}

/**
 * Works the greens in work off together, step after step: of the steps that could begin before any of them is over, the one whose green has the least time to spare goes first
 * (active schedule generation after Giffler and Thompson 1960, least slack first; from memory). Greens that are given up come behind all others. `outOfTurn` draws minutes by which a step is taken as more or less pressing than it is. Steps that are not over by `untilMin` are left.
 */
export const workOff = (
  broken: WorkedOff,
  tails: readonly (readonly number[])[],
  givenUp: ReadonlySet<number>,
  untilMin: number,
  outOfTurn: () => number = () => 0,
): Field => {
  const { problem, marks, old } = broken
  const field = copyField(broken.stood)
  const limits = new Map(
    coursesOf(problem, field.tasks, marks).map((one) => [one.green, limitsOf(problem, one.opened).finish]),
  )
  const bidOf = (green: number): Bid | null => {
    const step = field.done[green] ?? 0
    const own = problem.greens[green]?.steps[step]
    if (own === undefined || field.stuck[green] === 1) return null
    const was = old[green]?.[step] ?? null
    const from = Math.max(field.nowMin, chainFrom(field, green, step))
    const wanted: Wanted = {
      green,
      step: own,
      machine: was?.machine ?? null,
      people: was?.people ?? [],
      from,
      end: untilMin,
      loyalty: ANYBODY,
    }
    const offer = from >= NEVER ? null : bestOffer(field, wanted)
    if (offer === null) {
      field.stuck[green] = 1
      return null
    }
    const isAftercare = step > (marks[green]?.finish ?? step)
    const behind = givenUp.has(green) || isAftercare ? BEHIND_MIN : 0
    return {
      green,
      wanted,
      offer,
      latestStart: (limits.get(green) ?? NEVER) - (tails[green]?.[step] ?? 0) + behind + outOfTurn(),
    }
  }
  // What is taken only pushes others later, so an old bid never promises too much; it is asked again when its turn comes.
  const bids = new Map<number, Bid>()
  const fresh = new Set<number>()
  const ask = (green: number): void => {
    const bid = bidOf(green)
    if (bid === null) bids.delete(green)
    else bids.set(green, bid)
    fresh.add(green)
  }
  for (const green of broken.opened) ask(green)
  while (bids.size > 0) {
    const all = [...bids.values()]
    const over = Math.min(...all.map(({ offer }) => offer.crew.start + offer.minutes))
    const first = all
      .filter(({ offer }) => offer.crew.start < over)
      .reduce((best, bid) => (bid.latestStart < best.latestStart ? bid : best))
    if (!fresh.has(first.green)) {
      ask(first.green)
      continue
    }
    take(field, first.wanted, first.offer)
    fresh.clear()
    ask(first.green)
  }
  return field
}

/** Choices of greens to give up, none first, then each, then each two. */
const givenUps = (greens: readonly number[]): readonly ReadonlySet<number>[] => [
  new Set<number>(),
  ...greens.map((green) => new Set([green])),
  ...greens.flatMap((one, index) => greens.slice(index + 1).map((other) => new Set([one, other]))),
]

/** Most choices tried: with five greens in work there are 16. */
const MOST_TRIES = 24

/**
 * Where greens are caught all the same: so many more tries, always the same ones. In every second one each step is taken as up to so many minutes more or less pressing; in
 * the others posts are drawn: of those trained for an operation some leave it to the rest, so that nobody is called away from the step that all wait for.
 */
const STRAY_TRIES = 120
const LEAVES_POST_PERCENT = 15
/** Where more are caught than this, no other order has been seen to save any, and the time is kept for the search. */
const MOST_CAUGHT_TO_STRAY = 2
const STRAY_MIN = 90

/** Who may do what, with some posts left to the rest; no operation is left with fewer people than its largest crew. */
const fewerPosts = (
  { machines }: Problem,
  skilled: Field['skilled'],
  leaves: () => boolean,
): Field['skilled'] =>
  new Map(
    [...skilled].map(([operation, people]) => {
      const crews = machines.flatMap((machine) =>
        machine.operations.includes(operation) ? [machine.crew] : [],
      )
      let spare = people.length - Math.max(1, ...crews)
      const stays = people.filter(() => {
        const isSpared = spare > 0 && leaves()
        if (isSpared) spare--
        return !isSpared
      })
      return [operation, stays]
    }),
  )

/** The greens in work, worked off so that as few as can be are caught: the field with them laid, and which are caught. */
export const rescue = (
  broken: Broken,
  savedByShift: ReadonlySet<number>,
): { readonly field: Field; readonly caught: readonly number[] } => {
  const { problem, marks } = broken
  const tails = tailsOf(broken)
  const open = inWork(broken)
  let best: { field: Field; caught: readonly number[]; rank: readonly [number, number, number] } | null = null
  let fewestCaught = open.length
  const savedOnce = new Set<number>()
  const weigh = (field: Field): boolean => {
    const courses = coursesOf(problem, field.tasks, marks).filter((one) => open.includes(one.green))
    const caught = courses.filter((one) => !isInTime(problem, one))
    fewestCaught = Math.min(fewestCaught, caught.length)
    for (const one of courses) if (isInTime(problem, one)) savedOnce.add(one.green)
    const rank = [
      caught.filter(({ green }) => savedByShift.has(green)).length,
      caught.length,
      courses.reduce((sum, one) => sum + Math.min(one.finished, problem.horizonMin), 0),
    ] as const
    const better =
      best === null || rank.map((part, at) => part - (best?.rank[at] ?? 0)).find((off) => off !== 0)
    if (better === true || (typeof better === 'number' && better < 0))
      best = { field, caught: caught.map(({ green }) => green), rank }
    return caught.length === 0
  }
  const areSaved = givenUps(open)
    .slice(0, MOST_TRIES)
    .some((givenUp) => weigh(workOff(broken, tails, givenUp, problem.horizonMin)))
  // Greens that are caught whichever others are given up are not saved by another order either.
  const isHopeless = fewestCaught > MOST_CAUGHT_TO_STRAY || open.some((green) => !savedOnce.has(green))
  const tries = isHopeless ? 0 : STRAY_TRIES
  const random = randomOf(1)
  const stray = (): number => random.below(2 * STRAY_MIN + 1) - STRAY_MIN
  const leaves = (): boolean => random.below(100) < LEAVES_POST_PERCENT
  const { stood } = broken
  for (let tried = 0, saved = areSaved; !saved && tried < tries; tried++) {
    const field =
      tried % 2 === 0
        ? workOff(broken, tails, new Set(), problem.horizonMin, stray)
        : workOff(
            { ...broken, stood: { ...stood, skilled: fewerPosts(problem, stood.skilled, leaves) } },
            tails,
            new Set(),
            problem.horizonMin,
          )
    // Those who left a post may do whatever else there is to do.
    saved = weigh({ ...field, skilled: stood.skilled })
  }
  return best ?? { field: broken.stood, caught: [] }
}
