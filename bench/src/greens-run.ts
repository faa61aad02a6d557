import {
  attendedMin,
  compileProblem,
  isCleanSchedule,
  lowerBound,
  solve,
  type BoundBy,
  type Problem,
} from '@swardwright/engine'
import { cpuSince } from './cpu.ts'
import type { ModelFor } from './greens-model.ts'
import { askPeer, type Found } from './greens-peer.ts'
import { bareWeek, type Week } from './greens-weeks.ts'
import { rounded } from './rounded.ts'

/** How hard both engines search. */
export type Effort = {
  readonly seed: number
  /** Complete schedules of ours at most. */
  readonly schedules: number
  /** Seconds for the general engine, by the clock; ours gets the processor time that it used, one core each. */
  readonly seconds: number
  /** Where the general engine has the whole problem, ours searches first, for those seconds of processor time, and the other one begins at our plan. */
  readonly hinted: boolean
}

/** What the general engine found, in the same run. */
export type PeerResult = Found & {
  /** Our manned minutes from the start of the horizon to the finish over its own: at most 1 where we are not behind. Null unless its plan is clean and ours is of the same kind: all greens, no fixture clash, one day each. */
  readonly ratio: number | null
}

/** One week, searched. Minutes from the first midnight. */
export type WeekResult = {
  readonly name: string
  readonly greens: number
  readonly planned: number
  readonly finishMin: number
  readonly fixtureClashes: number
  readonly shutGreenDays: number
  readonly clean: boolean
  readonly schedules: number
  /** Processor seconds. */
  readonly seconds: number
  /** On one core. */
  readonly schedulesPerSecond: number
  /** The engine's own bound for the greens planned, and the better of it and what the general engine has proven. */
  readonly boundMin: number | null
  readonly boundBy: BoundBy
  readonly bestBoundMin: number | null
  /** Manned minutes from the bound to the finish, in percent of those from the start of the horizon to the finish. */
  readonly gapPercent: number | null
  readonly bestGapPercent: number | null
  readonly unfinishedAtLeast: number
  readonly peer: PeerResult | null
}

/** Ours has at least this, so that a problem the other engine solves at once is not lost to the start of a search. */
const LEAST_SECONDS = 0.2

const gapOf = (problem: Problem, boundMin: number | null, finishMin: number): number | null => {
  const all = attendedMin(problem, 0, finishMin)
  return boundMin === null || all === 0
    ? null
    : rounded((100 * attendedMin(problem, boundMin, finishMin)) / all, 2)
}

/** Our manned minutes from the start of the horizon to the finish, over the general engine's. */
const ratioOf = (problem: Problem, peer: Found, finishMin: number): number | null =>
  peer.clean === true && peer.finishMin !== null
    ? rounded(attendedMin(problem, 0, finishMin) / attendedMin(problem, 0, peer.finishMin), 4)
    : null

/** One week searched by ours: the schedule with its score, and processor seconds. */
type Ours = ReturnType<typeof solve> & { readonly usedS: number }

const searchOurs = (problem: Problem, { seed, schedules }: Effort, limitS: number): Ours => {
  const mark = process.cpuUsage()
  const solved = solve(problem, { seed, schedules, stop: () => cpuSince(mark) > limitS })
  return { ...solved, usedS: cpuSince(mark) }
}

const plannedIn = ({ schedule }: Ours): number[] =>
  [...new Set(schedule.tasks.flatMap(({ green }) => green ?? []))].toSorted((a, b) => a - b)

const classOf = ({ score }: Ours, planned: readonly number[]): ModelFor => ({
  greens: planned,
  keepFixtures: score.fixtureClashes === 0,
  oneDay: score.shutGreenDays === planned.length,
})

/** Whether a plan is one that the general engine looks for: all greens, no fixture clash, one day each. */
const isInClass = (problem: Problem, { greens, keepFixtures, oneDay }: ModelFor): boolean =>
  keepFixtures && oneDay && greens.length === problem.greens.length

type Both = { readonly ours: Ours; readonly peer: Found | null }

/** The general engine first, then ours for no more processor time than that one took (and `effort.seconds` where there is none), so that a busy machine is fair to both. */
const peerFirst = async (
  problem: Problem,
  effort: Effort,
  hasPeer: boolean,
  isFull: boolean,
): Promise<Both> => {
  const { seconds } = effort
  const peer = hasPeer ? await askPeer({ problem, isFull, seconds, begun: null }) : null
  return {
    peer,
    ours: searchOurs(problem, effort, peer === null ? seconds : Math.max(LEAST_SECONDS, peer.seconds)),
  }
}

/** Ours first; then the general engine begins at our plan, where that is one that it looks for. */
const oursFirst = async (problem: Problem, effort: Effort): Promise<Both> => {
  const { seconds } = effort
  const ours = searchOurs(problem, effort, seconds)
  const begun = isInClass(problem, classOf(ours, plannedIn(ours))) ? ours.schedule : null
  return { ours, peer: await askPeer({ problem, isFull: true, seconds, begun }) }
}

/** Searches a week with ours and the general engine, and holds what they found against the bounds. */
export const runWeek = async (
  week: Week,
  effort: Effort,
  hasPeer: boolean,
  isBare: boolean,
): Promise<WeekResult> => {
  const { name, problem } = isBare ? bareWeek(week) : week
  const { ours, peer } =
    hasPeer && isBare && effort.hinted
      ? await oursFirst(problem, effort)
      : await peerFirst(problem, effort, hasPeer, isBare)
  const { schedule, score, schedules, usedS } = ours
  const planned = plannedIn(ours)
  const wanted = classOf(ours, planned)
  const inClass = isInClass(problem, wanted)
  const bound = lowerBound(problem, wanted)
  const peerBound = inClass ? (peer?.boundMin ?? 0) : 0
  const bestBoundMin = bound.finishMin === null ? null : Math.max(bound.finishMin, peerBound)
  return {
    name,
    greens: problem.greens.length,
    planned: planned.length,
    finishMin: score.finishMin,
    fixtureClashes: score.fixtureClashes,
    shutGreenDays: score.shutGreenDays,
    clean: isCleanSchedule(compileProblem(problem), schedule),
    schedules,
    seconds: rounded(usedS, 2),
    schedulesPerSecond: Math.round(schedules / Math.max(usedS, 1e-3)),
    boundMin: bound.finishMin,
    boundBy: bound.by,
    bestBoundMin,
    gapPercent: gapOf(problem, bound.finishMin, score.finishMin),
    bestGapPercent: gapOf(problem, bestBoundMin, score.finishMin),
    unfinishedAtLeast: lowerBound(problem, { keepFixtures: wanted.keepFixtures }).unfinishedGreens,
    peer: peer === null ? null : { ...peer, ratio: inClass ? ratioOf(problem, peer, score.finishMin) : null },
  }
}
