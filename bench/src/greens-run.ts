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

/**
 * Searches a week with the general engine, then with ours for no more processor time than that one took (and `effort.seconds` where there is none), so that a busy
 * machine is fair to both.
 */
export const runWeek = async (
  week: Week,
  effort: Effort,
  hasPeer: boolean,
  isBare: boolean,
): Promise<WeekResult> => {
  const { name, problem } = isBare ? bareWeek(week) : week
  const peer = hasPeer ? await askPeer({ problem, isFull: isBare, seconds: effort.seconds }) : null
  const limit = peer === null ? effort.seconds : Math.max(LEAST_SECONDS, peer.seconds)
  const mark = process.cpuUsage()
  const stop = (): boolean => cpuSince(mark) > limit
  const { schedule, score, schedules } = solve(problem, {
    seed: effort.seed,
    schedules: effort.schedules,
    stop,
  })
  const seconds = cpuSince(mark)
  const planned = [...new Set(schedule.tasks.flatMap(({ green }) => green ?? []))].toSorted((a, b) => a - b)
  const wanted: ModelFor = {
    greens: planned,
    keepFixtures: score.fixtureClashes === 0,
    oneDay: score.shutGreenDays === planned.length,
  }
  const inClass = wanted.keepFixtures && wanted.oneDay && planned.length === problem.greens.length
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
    seconds: rounded(seconds, 2),
    schedulesPerSecond: Math.round(schedules / Math.max(seconds, 1e-3)),
    boundMin: bound.finishMin,
    boundBy: bound.by,
    bestBoundMin,
    gapPercent: gapOf(problem, bound.finishMin, score.finishMin),
    bestGapPercent: gapOf(problem, bestBoundMin, score.finishMin),
    unfinishedAtLeast: lowerBound(problem, { keepFixtures: wanted.keepFixtures }).unfinishedGreens,
    peer: peer === null ? null : { ...peer, ratio: inClass ? ratioOf(problem, peer, score.finishMin) : null },
  }
}
