import type { ChainMarks } from '../chain.ts'
import type { Problem } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { Loyalty } from './crew.ts'
import type { Field } from './field.ts'
import { coursesOf, isInTime, type GreenCourse } from './judge-field.ts'
import { layWeek } from './laid-week.ts'
import { inOrder, type Job } from './lay.ts'
import { placeWhole } from './place-whole.ts'
import { pinnedOf, type Pinned } from './pinned.ts'
import type { OldSteps } from './wishes.ts'

/** What the repair works on. */
export type Broken = {
  readonly problem: Problem
  /** All that stands, with nothing laid yet. */
  readonly stood: Field
  readonly marks: readonly ChainMarks[]
  readonly old: OldSteps
  readonly oldOpening: readonly (number | null)[]
  /** Greens that are in work or done at now. */
  readonly opened: ReadonlySet<number>
  /** Greens that the manager leaves out. */
  readonly skipped: ReadonlySet<number>
}

/** Greens that stand opened and are not finished by now. */
export const inWork = ({ problem, stood, marks, opened }: Broken): readonly number[] =>
  coursesOf(problem, stood.tasks, marks)
    .filter(({ green, finished }) => opened.has(green) && finished > stood.nowMin)
    .map(({ green }) => green)

/** One way to repair. */
export type Way = {
  readonly opened: Loyalty
  readonly others: Loyalty
  /** True: the greens in work are laid before all else, and as early as they go. */
  readonly openedFirst: boolean
}

const FAITHFUL: Loyalty = { machineMin: Infinity, personMin: Infinity }
const LOYAL: Loyalty = { machineMin: 20, personMin: 10 }
const EASY: Loyalty = { machineMin: 2, personMin: 1 }

/**
 * Ways to repair, the most faithful first. `shift`: the same machines, people and order, everything only later (the old plan shifted to the right). `swap`:
 * another machine or person where waiting costs more than 20 or 10 minutes. `openedFirst`: that, and the greens in work before the others. `hurry`: the
 * greens in work take whatever is free. The minutes are ours (common practice, no source): a changed post costs about a walk and a few words.
 */
export const WAYS = {
  shift: { opened: FAITHFUL, others: FAITHFUL, openedFirst: false },
  swap: { opened: LOYAL, others: LOYAL, openedFirst: false },
  openedFirst: { opened: LOYAL, others: LOYAL, openedFirst: true },
  hurry: { opened: EASY, others: LOYAL, openedFirst: true },
} as const satisfies Readonly<Record<string, Way>>

/** A green that is to be opened on another day or at a given minute. */
export type Wish = { readonly day: number; readonly openMin: number | null }

/** How far a green's steps move so that it is opened as pinned; 0 where it is not. */
const movedBy = ({ problem, oldOpening }: Broken, green: number, wish: Wish | undefined): number => {
  const was = oldOpening[green]
  if (wish === undefined || was === null || was === undefined) return 0
  if (wish.openMin !== null) return wish.openMin - was
  const from = problem.days.find(({ endMin }) => was < endMin)?.startMin ?? 0
  return (problem.days[wish.day]?.startMin ?? from) - from
}

/** A pinned step: no earlier than then, and on these. */
export type StepWish = {
  readonly startMin: number
  readonly machine: number | null
  readonly people: readonly number[] | null
}

/** What the manager wants: by green, and by `green step`. */
export type Wishes = {
  readonly greens: ReadonlyMap<number, Wish>
  readonly steps: ReadonlyMap<string, StepWish>
}

/** Before all keys of greens that are not opened; those of opened greens stay in their own order. */
const AHEAD_MIN = 100_000

const jobsOf = (
  broken: Broken,
  way: Way,
  wishes: Wishes,
  shifts: ReadonlyMap<number, number>,
): readonly Job[] => {
  const { problem, old, opened, stood, marks } = broken
  return inOrder(
    problem.greens.flatMap(({ steps }, green): readonly Job[] => {
      if (broken.skipped.has(green)) return []
      const isOpened = opened.has(green)
      const by = isOpened ? 0 : (shifts.get(green) ?? movedBy(broken, green, wishes.greens.get(green)))
      let key = 0
      const jobs: Job[] = []
      for (let step = stood.done[green] ?? 0; step < steps.length; step++) {
        const was = old[green]?.[step] ?? null
        if (was === null && !isOpened) return []
        const pin = wishes.steps.get(`${green} ${step}`)
        key = Math.max(key, pin?.startMin ?? (was?.startMin ?? key) + by)
        const ahead = isOpened && way.openedFirst
        jobs.push({
          green,
          step,
          key: ahead ? key - AHEAD_MIN : key,
          least: pin?.startMin ?? (ahead ? 0 : key),
          machine: pin?.machine ?? was?.machine ?? null,
          people: pin?.people ?? was?.people ?? [],
          loyalty: pin === undefined ? (isOpened ? way.opened : way.others) : FAITHFUL,
          pinMin:
            pin?.startMin ??
            (step === marks[green]?.open ? (wishes.greens.get(green)?.openMin ?? null) : null),
        })
      }
      return jobs
    }),
  )
}

/** What is wrong with a laid week, and what to do about it. */
type Remedy =
  | { readonly kind: 'hold'; readonly green: number; readonly until: number }
  | { readonly kind: 'putOff'; readonly green: number }

const fixtureClash = (problem: Problem, course: GreenCourse): number =>
  problem.greens[course.green]?.fixtures.find(
    (fixture) => fixture.start < course.finished && fixture.end > course.opened,
  )?.end ?? 0

const capRemedy = (
  broken: Broken,
  courses: readonly GreenCourse[],
  isFixed: Pinned['isFixed'],
): Remedy | null => {
  const cap = broken.problem.settings.openGreensCap
  for (const one of courses) {
    const inWork = courses.filter((other) => other.opened <= one.opened && other.finished > one.opened)
    if (inWork.length <= cap) continue
    const late = inWork.findLast((other) => !broken.opened.has(other.green) && !isFixed(other))
    if (late === undefined) continue
    const thins = Math.min(...inWork.filter((other) => other !== late).map((other) => other.finished))
    return thins >= NEVER
      ? { kind: 'putOff', green: late.green }
      : { kind: 'hold', green: late.green, until: thins }
  }
  return null
}

const firstRemedy = (
  broken: Broken,
  courses: readonly GreenCourse[],
  isFixed: Pinned['isFixed'],
): Remedy | null => {
  const { problem } = broken
  const [first] = courses
  if (first === undefined) return null
  const checkedAfter = (one: GreenCourse): number => one.openedOver + problem.settings.firstGreenCheckMin
  const mayWait = (one: GreenCourse): boolean => !broken.opened.has(one.green) && !isFixed(one)
  const easy = courses.find(({ green }) => problem.greens[green]?.weak !== true)
  if (problem.greens[first.green]?.weak === true && easy !== undefined && mayWait(first))
    return { kind: 'hold', green: first.green, until: checkedAfter(easy) }
  const early = courses
    .slice(1)
    .filter((one) => one.opened < checkedAfter(first) && !broken.opened.has(one.green))
  const waiting = early.find(mayWait)
  if (waiting !== undefined) return { kind: 'hold', green: waiting.green, until: checkedAfter(first) }
  // A pinned green stays where it is: then the green before it comes after.
  const [pinned] = early
  return pinned === undefined || !mayWait(first)
    ? null
    : { kind: 'hold', green: first.green, until: checkedAfter(pinned) }
}

/** Greens that are laid but not finished in time, or not laid whole, latest opening first. A pin that breaks rules whatever the others do stands (`against`). */
const lateRemedy = (
  broken: Broken,
  field: Field,
  courses: readonly GreenCourse[],
  { pinned, against }: Pinned,
): Remedy | null => {
  const { problem, opened } = broken
  const stuck = problem.greens.findIndex(
    (_, green) =>
      field.stuck[green] === 1 && !opened.has(green) && (!pinned.has(green) || against.has(green)),
  )
  if (stuck >= 0) return { kind: 'putOff', green: stuck }
  const late = courses.findLast(
    (one) => !opened.has(one.green) && !against.has(one.green) && !isInTime(problem, one),
  )
  if (late === undefined) return null
  if (!pinned.has(late.green)) return { kind: 'putOff', green: late.green }
  // A pinned green stands: another one makes room for it, if there is one that day.
  const day = problem.days.findIndex(({ endMin }) => late.opened < endMin)
  const other = courses.findLast(
    (one) =>
      !opened.has(one.green) &&
      !pinned.has(one.green) &&
      problem.days.findIndex(({ endMin }) => one.opened < endMin) === day,
  )
  return { kind: 'putOff', green: other?.green ?? late.green }
}

const pinRemedy = (broken: Broken, courses: readonly GreenCourse[], wishes: Wishes): Remedy | null => {
  for (const [green, { openMin }] of wishes.greens) {
    const own = courses.find((one) => one.green === green)
    if (openMin === null || own === undefined || own.opened <= openMin) continue
    const inWay = courses.find(
      (one) =>
        !broken.opened.has(one.green) &&
        !wishes.greens.has(one.green) &&
        one.opened < own.opened &&
        one.openedOver > openMin - 30,
    )
    if (inWay !== undefined) return { kind: 'hold', green: inWay.green, until: openMin + 1 }
  }
  return null
}

const remedyFor = (broken: Broken, field: Field, wishes: Wishes, pins: Pinned): Remedy | null => {
  const { problem } = broken
  const { pinned, isFixed } = pins
  const courses = coursesOf(problem, field.tasks, broken.marks)
  const clash = courses.find(
    (one) => !broken.opened.has(one.green) && !pinned.has(one.green) && fixtureClash(problem, one) > 0,
  )
  return (
    pinRemedy(broken, courses, wishes) ??
    firstRemedy(broken, courses, isFixed) ??
    capRemedy(broken, courses, isFixed) ??
    (clash === undefined
      ? null
      : { kind: 'hold', green: clash.green, until: fixtureClash(problem, clash) }) ??
    lateRemedy(broken, field, courses, pins)
  )
}

/** Rounds of laying after which a repair is left as it is. Each round puts off a green or holds one back, so few are needed. */
const MOST_ROUNDS = 60

/** A week repaired in one way: the field, and the greens that found no place in it. */
export type Repaired = {
  readonly field: Field
  readonly left: readonly number[]
}

const NO_SHIFTS: ReadonlyMap<number, number> = new Map()

/** `shifts` moves whole greens (by index, minutes) against the old plan before anything is laid.
 * Lays the week in one way, green after green put off or held back until what is laid is in time. */
export const repair = (
  broken: Broken,
  way: Way,
  wishes: Wishes,
  shifts: ReadonlyMap<number, number> = NO_SHIFTS,
): Repaired => {
  const { problem, opened, skipped, old, marks } = broken
  const jobs = jobsOf(broken, way, wishes, shifts)
  const pins = pinnedOf(broken, wishes, LOYAL)
  const holds = new Map<number, number>()
  for (const [green, { openMin }] of wishes.greens) if (openMin !== null) holds.set(green, openMin)
  const week = layWeek(
    broken.stood,
    jobs,
    marks.map(({ open }) => open),
    holds,
  )
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const remedy = remedyFor(broken, week.field(), wishes, pins)
    if (remedy === null) break
    if (remedy.kind === 'putOff' || week.heldUntil(remedy.green) >= remedy.until) week.putOff(remedy.green)
    else week.hold(remedy.green, remedy.until)
  }
  let field = week.field()
  const left: number[] = []
  const planned = new Set(jobs.map(({ green }) => green))
  const waiting = problem.greens
    .map((_, green) => green)
    .filter(
      (green) => !opened.has(green) && !skipped.has(green) && (week.isPutOff(green) || !planned.has(green)),
    )
    .sort((a, b) => (broken.oldOpening[a] ?? NEVER) - (broken.oldOpening[b] ?? NEVER) || a - b)
  for (const green of waiting) {
    const whole = { green, old, loyalty: LOYAL, from: problem.committed?.nowMin ?? 0, keepFixtures: true }
    const wish = wishes.greens.get(green)
    const placed =
      placeWhole(field, { ...whole, day: wish?.day ?? null }, marks) ??
      placeWhole(field, { ...whole, day: null }, marks)
    if (placed === null) left.push(green)
    else field = placed
  }
  return { field, left }
}
