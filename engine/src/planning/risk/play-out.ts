import { chainMarks, type ChainMarks } from '../chain.ts'
import type { Problem, ScheduledTask, Span } from '../problem.ts'
import { NEVER } from '../spans.ts'
import { fitsShifts, newWalk, passTask, settledStart, walkTasks, type Walk, type WalkTask } from '../walk.ts'
import type { Scenario } from './scenario.ts'

/** What the crew does when the weather is not as planned. */
export type Recourse = {
  /** By day of the problem: no green is opened after this minute. NEVER where nothing holds them back. */
  readonly lastOpenMin: readonly number[]
}

/** A green that the crew wants to open later than planned: not before this minute. */
export type Delay = { readonly green: number; readonly openMin: number }

/** A day of a plan, read once and played out under many skies. */
export type DayPlan = {
  readonly problem: Problem
  readonly day: number
  /** All tasks of the day, and what is done on later days to the greens that it opens. */
  readonly tasks: readonly WalkTask[]
  /** Greens opened on the day in the planned order, with their planned opening, finish and marks. */
  readonly greens: readonly PlannedGreen[]
}

/** A green of the day as planned. */
export type PlannedGreen = {
  readonly green: number
  readonly openMin: number
  readonly finishMin: number
  readonly marks: ChainMarks
}

/** What came of a day: greens by index. A caught green was opened and met rain or dark before it might. */
export type DayOutcome = {
  readonly opened: readonly number[]
  readonly finished: readonly number[]
  readonly caught: readonly number[]
}

/** The days of a plan on which a green is opened. `tasks` in start order. */
export const dayPlans = (problem: Problem, tasks: readonly ScheduledTask[]): readonly DayPlan[] => {
  const walked = walkTasks(problem, tasks)
  const greens = problem.greens.flatMap((green, index): readonly (PlannedGreen & { day: number })[] => {
    const marks = chainMarks(green)
    const own = walked.filter(({ task }) => task.green === index)
    const open = own.find(({ stepIndex }) => stepIndex === marks.open)
    const finish = own.find(({ stepIndex }) => stepIndex === marks.finish)
    if (open === undefined || finish === undefined) return []
    const [openMin, finishMin] = [open.task.startMin, finish.task.finishMin]
    return [{ green: index, openMin, finishMin, marks, day: open.day }]
  })
  return problem.days.flatMap((_, day) => {
    const opened = greens.filter((green) => green.day === day).sort((a, b) => a.openMin - b.openMin)
    const today = new Set(opened.map(({ green }) => green))
    const toPlay = walked.filter(
      (one) => one.day === day || (one.day > day && one.task.green !== null && today.has(one.task.green)),
    )
    return opened.length === 0 ? [] : [{ problem, day, tasks: toPlay, greens: opened }]
  })
}

const meets = (spans: readonly Span[], start: number, end: number): boolean =>
  spans.some((span) => span.start < end && span.end > start)

/** One green while a day is played out. */
type Played = {
  readonly planned: PlannedGreen
  /** Never to be opened today. */
  isHeld: boolean
  openedMin: number
  clearedMin: number
  finishedMin: number
  /** A task of it found no time any more. */
  isStuck: boolean
}

/** Whether the crew opens a green at a minute: not after the last safe start, and only if its work as planned is over before dark. */
const mayOpen = (plan: DayPlan, green: PlannedGreen, startMin: number, recourse: Recourse): boolean =>
  startMin <= (recourse.lastOpenMin[plan.day] ?? NEVER) &&
  startMin + green.finishMin - green.openMin <=
    Math.max(green.finishMin, plan.problem.days[plan.day]?.darkMin ?? 0)

/** Whether a green that was opened met rain, or dark before it might. */
const isCaught = (scenario: Scenario, day: number, played: Played): boolean => {
  const { openedMin, clearedMin, finishedMin, planned } = played
  if (meets(scenario.rain, openedMin, Math.min(finishedMin, scenario.horizonMin))) return true
  const dark = scenario.days[day]?.darkMin ?? scenario.horizonMin
  if (clearedMin > dark) return true
  const standsNight = planned.finishMin > dark && scenario.settings.mayStandDryNight
  return finishedMin > dark && !standsNight
}

/** Starts a task if the day still holds it: its minute, or null. */
const startOf = (scenario: Scenario, walk: Walk, one: WalkTask, least: number): number | null => {
  const startMin = settledStart(walk, one, least)
  const finishMin = startMin + one.task.finishMin - one.task.startMin
  const dayEnd = scenario.days[one.day]?.endMin ?? scenario.horizonMin
  return finishMin > dayEnd || !fitsShifts(scenario, one.task.people, startMin, finishMin) ? null : startMin
}

const note = (played: Played, stepIndex: number, startMin: number, finishMin: number): void => {
  const { open, clear, finish } = played.planned.marks
  if (stepIndex === open) played.openedMin = startMin
  if (stepIndex === clear) played.clearedMin = finishMin
  if (stepIndex === finish) played.finishedMin = finishMin
}

/**
 * Plays one day of a plan out under a sky that may come. Tasks keep their order, machines and people and are done as planned or later, as soon as the hours,
 * the drying, the ways and the shifts of that sky allow. The recourse rule: no green is opened in rain, nor after the last safe start, nor when its work as planned
 * would not be over before dark; a green that is open is carried on with. Nothing is skipped or hurried when rain comes, so chances err on the safe side.
 */
export const playOut = (
  plan: DayPlan,
  scenario: Scenario,
  recourse: Recourse,
  delay: Delay | null = null,
): DayOutcome => {
  const walk = newWalk(scenario)
  const greens = new Map<number, Played>(
    plan.greens.map((planned) => [
      planned.green,
      { planned, isHeld: false, openedMin: NEVER, clearedMin: NEVER, finishedMin: NEVER, isStuck: false },
    ]),
  )
  for (const one of plan.tasks) {
    const played = one.task.green === null ? undefined : greens.get(one.task.green)
    if (played !== undefined && (played.isHeld || played.isStuck)) continue
    const isOpening = played !== undefined && one.stepIndex === played.planned.marks.open
    const least = isOpening && delay?.green === one.task.green ? delay.openMin : 0
    const startMin = startOf(scenario, walk, one, least)
    if (isOpening && (startMin === null || !mayOpen(plan, played.planned, startMin, recourse))) {
      played.isHeld = true
      continue
    }
    if (startMin === null) {
      if (played !== undefined) played.isStuck = true
      continue
    }
    passTask(walk, one, startMin)
    if (played !== undefined && one.step !== null)
      note(played, one.stepIndex, startMin, startMin + one.task.finishMin - one.task.startMin)
  }
  const opened = [...greens.values()].filter(({ openedMin }) => openedMin < NEVER)
  const caught = opened.filter((played) => isCaught(scenario, plan.day, played))
  const indices = (list: readonly Played[]): readonly number[] => list.map(({ planned }) => planned.green)
  return {
    opened: indices(opened),
    finished: indices(opened.filter((played) => played.finishedMin < NEVER && !caught.includes(played))),
    caught: indices(caught),
  }
}
