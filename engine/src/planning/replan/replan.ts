import { compileProblem } from '../check/compile.ts'
import type { Proofs } from '../check/lost/lost.ts'
import type { Schedule, ScheduledTask } from '../problem.ts'
import { candidateOf, compareCandidates, judged, type Candidate } from './candidate.ts'
import { bySearch } from './by-search.ts'
import { forgetLostBreaks, isWork, newField, stand, type Field } from './field.ts'
import { coursesOf, isInTime, marksOf } from './judge-field.ts'
import { unplannedOf } from './left-out.ts'
import { byTime } from './old-plan.ts'
import { repair, WAYS, type Broken, type Repaired, type Way, type Wishes } from './repair.ts'
import { rescue } from './rescue.ts'
import { moreSaved } from './more-saved.ts'
import { isOpened } from './standing.ts'
import type { Situation } from './situation.ts'
import { oldOpenings, oldSteps } from './wishes.ts'

/** All that stands, laid out. */
export const stoodField = ({ problem, standing, moment }: Situation): Field => {
  const field = newField(problem, moment.nowMin)
  const later = new Map<number, ScheduledTask>()
  const nexts = standing.tasks
    .map((_, index) => {
      const task = standing.tasks[standing.tasks.length - 1 - index]
      if (task?.machine === null || task === undefined) return undefined
      const next = later.get(task.machine)
      later.set(task.machine, task)
      return next
    })
    .reverse()
  standing.tasks.forEach((task, index) => stand(field, task, nexts[index]))
  forgetLostBreaks(field)
  return field
}

/** What the repair starts from. */
export const brokenOf = (situation: Situation): Broken => {
  const { problem, standing, moment } = situation
  const old = oldSteps(situation)
  const greens = problem.greens.map((_, green) => green)
  return {
    problem,
    stood: stoodField(situation),
    marks: marksOf(problem),
    old,
    oldOpening: oldOpenings(problem, old),
    opened: new Set(greens.filter((green) => isOpened(problem, standing.tasks, green))),
    skipped: new Set(moment.skipped.keys()),
  }
}

/** The pins that are still open: on greens and steps that have not begun. */
export const wishesOf = ({ problem, standing }: Situation, broken: Broken): Wishes => {
  const pins = problem.committed?.pins ?? []
  return {
    greens: new Map(
      pins.flatMap((pin) =>
        pin.kind === 'green' && !broken.opened.has(pin.green)
          ? [[pin.green, { day: pin.day, openMin: pin.openMin }] as const]
          : [],
      ),
    ),
    steps: new Map(
      pins.flatMap((pin) => {
        if (pin.kind !== 'step') return []
        const begun = standing.tasks.filter((task) => task.green === pin.green && isWork(task)).length
        return begun > pin.step
          ? []
          : [
              [
                `${pin.green} ${pin.step}`,
                { startMin: pin.startMin, machine: pin.machine, people: pin.people },
              ] as const,
            ]
      }),
    ),
  }
}

/** A laid field as a schedule, with the greens that it leaves out. */
const scheduleOf = (situation: Situation, { field, left }: Repaired): Schedule => ({
  tasks: [...field.tasks].sort(byTime),
  unplanned: unplannedOf(situation, left, field.draws),
})

/** The old plan as it stands: what has been done, and all that has not begun exactly as planned. Null where facts make that impossible at a glance. */
const asPlanned = (situation: Situation, broken: Broken): Schedule | null => {
  const { problem, standing, oldTasks, moment } = situation
  if (standing.parts.length > 0 || moment.pins.length > 0 || moment.skipped.size > 0) return null
  const rest = oldTasks.filter(({ startMin }) => startMin >= moment.nowMin)
  const tasks = [...standing.tasks, ...rest].sort(byTime)
  const steps = problem.greens.map((green, index) => {
    const count = tasks.filter((task) => task.green === index && isWork(task)).length
    return { count, wanted: green.steps.length }
  })
  if (steps.some(({ count, wanted }) => count !== 0 && count !== wanted)) return null
  const left = steps.flatMap(({ count }, green) => (count === 0 ? [green] : []))
  const waiting = left.filter((green) => broken.oldOpening[green] !== null)
  return waiting.length > 0 ? null : { tasks, unplanned: unplannedOf(situation, left, []) }
}

/** Greens in work at now that the old plan, only shifted to the right, finishes in time. */
const savedByShift = (broken: Broken, shift: Schedule): ReadonlySet<number> =>
  new Set(
    coursesOf(broken.problem, shift.tasks, broken.marks)
      .filter((one) => broken.opened.has(one.green) && isInTime(broken.problem, one))
      .map(({ green }) => green),
  )

/** How far a schedule moves the greens that are not in work against the old plan, minutes. */
const shiftsOf = (broken: Broken, schedule: Schedule): ReadonlyMap<number, number> =>
  new Map(
    coursesOf(broken.problem, schedule.tasks, broken.marks).flatMap(({ green, opened }) => {
      const was = broken.oldOpening[green] ?? null
      return was === null || broken.opened.has(green) ? [] : [[green, opened - was] as const]
    }),
  )

/** The old plan only shifted to the right. */
export const shiftOf = (situation: Situation, broken: Broken): Candidate =>
  candidateOf(broken, 'shift', scheduleOf(situation, repair(broken, WAYS.shift, wishesOf(situation, broken))))

/** The chosen way. */
export type Chosen = {
  readonly best: Candidate
  /** Ways that were laid and compared. */
  readonly ways: number
}

const bestOf = (
  candidates: readonly Candidate[],
  compare: (a: Candidate, b: Candidate) => number,
): Candidate | undefined => [...candidates].sort(compare)[0]

/** All ways that are worth comparing, and the best that the checker has nothing against. */
export const chooseWay = (situation: Situation, broken: Broken, proofs: Proofs = new Map()): Chosen => {
  const compiled = compileProblem(situation.problem)
  const wishes = wishesOf(situation, broken)
  const candidates: Candidate[] = []
  const planned = asPlanned(situation, broken)
  if (planned !== null) {
    const same = judged(compiled, candidateOf(broken, 'asPlanned', planned), proofs)
    if (same.faults === 0 && same.caught.length === 0) return { best: same, ways: 1 }
  }
  const shift = shiftOf(situation, broken)
  candidates.push(shift)
  const lay = (from: Broken, way: Way, name: string): void => {
    candidates.push(candidateOf(from, name, scheduleOf(situation, repair(from, way, wishes))))
  }
  lay(broken, WAYS.swap, 'swap')
  lay(broken, WAYS.openedFirst, 'openedFirst')
  const isFlawless = (one: Candidate | undefined): boolean =>
    one !== undefined &&
    one.caught.every((green) => !saved.has(green)) &&
    judged(compiled, one, proofs).faults === 0
  const saved = savedByShift(broken, shift.schedule)
  const compare = compareCandidates(saved)
  // A way that the checker has nothing against catches no more greens than must be: then nobody need hurry.
  if (candidates.every(({ caught }) => caught.length > 0) && !isFlawless(bestOf(candidates, compare))) {
    lay(broken, WAYS.hurry, 'hurry')
    if (candidates.every(({ caught }) => caught.length > 0))
      lay({ ...broken, stood: rescue(broken, saved).field }, WAYS.swap, 'rescue')
    const fewest = bestOf(candidates, compare)
    if (fewest !== undefined) {
      const field = moreSaved(judged(compiled, fewest, proofs), broken, saved)
      if (field !== null) lay({ ...broken, stood: field }, WAYS.swap, 'together')
    }
  }
  const first = bestOf(candidates, compare)
  const costsGreens =
    first !== undefined && (first.putOff > 0 || first.score.unfinishedGreens > 0 || first.pinsMissed > 0)
  if (costsGreens) {
    const searched = bySearch(situation, broken)
    candidates.push(candidateOf(broken, 'search', searched))
    // The search hands posts out anew; its order of greens in the old hands changes less.
    const again = repair(broken, WAYS.openedFirst, wishes, shiftsOf(broken, searched))
    candidates.push(candidateOf(broken, 'searchOldHands', scheduleOf(situation, again)))
  }
  const order = [...candidates].sort(compare)
  let best: Candidate | null = null
  for (const candidate of order) {
    const word = judged(compiled, candidate, proofs)
    if (best === null || (word.faults ?? 0) < (best.faults ?? 0)) best = word
    if (word.faults === 0) break
  }
  return { best: best ?? judged(compiled, shift, proofs), ways: candidates.length }
}
