import { judgeSchedule } from '../check/check.ts'
import type { CompiledProblem } from '../check/compile.ts'
import type { LostGreen, Proofs } from '../check/lost/lost.ts'
import type { Schedule } from '../problem.ts'
import { scoreOf, type Score } from '../score.ts'
import { changeOf, type Change } from './change.ts'
import { isInTime, type GreenCourse, coursesOf } from './judge-field.ts'
import { missedPins } from './pins-missed.ts'
import type { Broken } from './repair.ts'

/** One way in which the day could go on. */
export type Candidate = {
  /** How it was found. */
  readonly by: string
  readonly schedule: Schedule
  readonly score: Score
  readonly change: Change
  /** Greens in work at now that are not finished before rain, dark or midnight. */
  readonly caught: readonly number[]
  /** Greens that are opened on a later day than the old plan has it. */
  readonly putOff: number
  /** Pins that it does not keep. */
  readonly pinsMissed: number
  /** Rules that it breaks and that are no matter of history or of greens that were lost already; null until the checker was asked. */
  readonly faults: number | null
  readonly lost: readonly LostGreen[]
}

const dayIndex = (broken: Broken, minute: number): number =>
  broken.problem.days.findIndex(({ endMin }) => minute < endMin)

/** Measures one way. */
export const candidateOf = (broken: Broken, by: string, schedule: Schedule): Candidate => {
  const { problem, opened, marks, oldOpening } = broken
  const courses = coursesOf(problem, schedule.tasks, marks)
  const nowMin = problem.committed?.nowMin ?? 0
  const isCaught = (one: GreenCourse): boolean =>
    opened.has(one.green) && one.finished > nowMin && !isInTime(problem, one)
  const putOff = courses.filter((one) => {
    const was = oldOpening[one.green]
    return (
      was !== null &&
      was !== undefined &&
      !opened.has(one.green) &&
      dayIndex(broken, one.opened) > dayIndex(broken, was)
    )
  }).length
  return {
    by,
    schedule,
    score: scoreOf(problem, schedule.tasks, schedule.unplanned.length + problem.excluded.length),
    change: changeOf(problem, broken.old, schedule.tasks, nowMin),
    caught: courses.filter(isCaught).map(({ green }) => green),
    putOff,
    pinsMissed: missedPins(broken, schedule.tasks).length,
    faults: null,
    lost: [],
  }
}

/** The same with the checker's word. */
export const judged = (compiled: CompiledProblem, candidate: Candidate, proofs: Proofs): Candidate => {
  const { faults, lost } = judgeSchedule(compiled, candidate.schedule, proofs)
  return { ...candidate, faults: faults.length, lost }
}

/**
 * The order in which ways are better, part after part: no green caught that the old plan, only shifted, would have finished; fewer caught; fewer pins
 * that are not kept; fewer left out; fewer fixture
 * clashes; fewer shut green-days; the smaller change (a green that is put off to a later day weighs in it with all its steps); then the earlier finish, less overtime, less travel.
 */
export const compareCandidates =
  (savedByShift: ReadonlySet<number>) =>
  (a: Candidate, b: Candidate): number => {
    const worse = (one: Candidate): number => one.caught.filter((green) => savedByShift.has(green)).length
    const parts: readonly (readonly [number, number])[] = [
      [worse(a), worse(b)],
      [a.caught.length, b.caught.length],
      [a.pinsMissed, b.pinsMissed],
      [a.score.unfinishedGreens, b.score.unfinishedGreens],
      [a.score.fixtureClashes, b.score.fixtureClashes],
      [a.score.shutGreenDays, b.score.shutGreenDays],
      [a.change.points, b.change.points],
      [a.score.finishMin, b.score.finishMin],
      [a.score.overtimeMin, b.score.overtimeMin],
      [a.score.travelMin, b.score.travelMin],
    ]
    for (const [first, second] of parts) if (first !== second) return first - second
    return 0
  }
