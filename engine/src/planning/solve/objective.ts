import type { Score } from '../score.ts'
import type { Judged } from './judge.ts'

/** A judged schedule with the parts that only count between schedules that are equal so far. */
export type Objective = {
  readonly judged: Judged
  /** Cost of moving away from the plan to stay near to; 0 where there is none. */
  readonly penalty: number
  readonly overtimeMin: number
  readonly travelMin: number
  readonly postChanges: number
}

/** What a change of post weighs against minutes of travel. */
const POST_CHANGE_MIN = 3

/** Above every guide, so that what comes before the finish weighs more. The whole stays below 2^53 up to 127 greens, clashes and green-days. */
const GUIDE_ROOM = 2 ** 24

/** What comes before the finish, as one number. */
export const leadCost = ({ unfinishedGreens, fixtureClashes, shutGreenDays }: Judged): number =>
  (unfinishedGreens * 256 + fixtureClashes) * 1024 + shutGreenDays

/** Mean finish of the greens, each as heavy as its work of all `workMin`; in parts of a minute. */
const meanFinish = ({ workedSum }: Judged, workMin: number, parts: number): number =>
  Math.floor((workedSum * parts) / Math.max(1, workMin))

/**
 * What leads the walk: all that comes before the finish, then the mean finish of the greens and a quarter of the last, in quarters of a minute. The last one alone
 * is a plateau: most exchanges leave it where it is, though they bring a whole day nearer to being spared. A green is as heavy as its work: then on one machine no order
 * is better than another (Smith 1956), and what counts is that no time is lost; with all as heavy as each other short greens would come first, and long ones be left for one day more.
 */
export const finishGuide = (judged: Judged, workMin: number): number =>
  leadCost(judged) * GUIDE_ROOM + Math.min(GUIDE_ROOM - 1, meanFinish(judged, workMin, 4) + judged.finishMin)

/** What leads the polishing: all that comes before the finish, then the last finish and a sixteenth of the mean, in sixteenths of a minute. */
export const polishGuide = (judged: Judged, workMin: number): number =>
  leadCost(judged) * GUIDE_ROOM +
  Math.min(GUIDE_ROOM - 1, judged.finishMin * 16 + meanFinish(judged, workMin, 1))

/** What leads the walk near another plan: all that comes before the finish, then the cost of moving away from it. */
export const nearGuide = (judged: Judged, penalty: number): number =>
  leadCost(judged) * GUIDE_ROOM + Math.min(GUIDE_ROOM - 1, Math.floor(penalty))

/** Below 0 when `a` is better, above 0 when `b` is. */
export const compareObjectives = (a: Objective, b: Objective): number =>
  leadCost(a.judged) - leadCost(b.judged) ||
  a.penalty - b.penalty ||
  a.judged.finishMin - b.judged.finishMin ||
  a.overtimeMin - b.overtimeMin ||
  a.travelMin + POST_CHANGE_MIN * a.postChanges - (b.travelMin + POST_CHANGE_MIN * b.postChanges)

/** The parts of an objective that a plan states. */
export const scoreOfObjective = ({ judged, overtimeMin, travelMin }: Objective): Score => ({
  unfinishedGreens: judged.unfinishedGreens,
  fixtureClashes: judged.fixtureClashes,
  shutGreenDays: judged.shutGreenDays,
  finishMin: judged.finishMin,
  overtimeMin,
  travelMin,
})
