import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { Problem, Schedule } from '../problem.ts'
import { compareScores, scoreOf, type Score } from '../score.ts'
import { attemptSets, generate, type Attempt, type Generated } from './generate.ts'
import { groundOf, type Ground } from './ground.ts'
import { whyLeft } from './why-left.ts'

/** How a search is run. Same problem, seed and count of schedules: same result, on every machine. */
export type SolveOptions = {
  readonly seed: number
  /** Complete generations to spend, at least 1. */
  readonly schedules: number
  /** Told after every improvement; changes nothing. */
  readonly onProgress?: (progress: { readonly schedules: number; readonly best: Score }) => void
}

/** The best schedule found, its score, and the generations really made. */
export type Solved = { readonly schedule: Schedule; readonly score: Score; readonly schedules: number }

type Candidate = {
  /** What leads the search where the finish alone gives no slope. */
  readonly guide: number
  readonly order: readonly number[]
  readonly score: Score
  readonly generated: Generated
}

/** Orders worth starting from: as the course is walked, the longest chains first, the weak ones first, the nearest to the shed first. */
const startOrders = (problem: Problem): readonly (readonly number[])[] => {
  const all = problem.greens.map((_, index) => index)
  const work = all.map((green) =>
    (problem.greens[green]?.steps ?? []).reduce(
      (sum, step) => sum + Math.min(...step.minutesByMachine.values()),
      0,
    ),
  )
  const way = all.map((green) => problem.personTravelMin[problem.greens[green]?.place ?? 0] ?? 0)
  const by = (key: (green: number) => number): readonly number[] =>
    [...all].sort((a, b) => key(a) - key(b) || a - b)
  return [
    all,
    by((green) => (problem.greens[green]?.weak === true ? 0 : 1)),
    by((green) => -(work[green] ?? 0)),
    by((green) => work[green] ?? 0),
    by((green) => way[green] ?? 0),
  ]
}

/** Moves one green elsewhere, or swaps two; now and then turns a stretch round. */
const neighbour = (order: readonly number[], draw: (most: number) => number): readonly number[] => {
  const next = [...order]
  const from = draw(next.length - 1)
  const to = draw(next.length - 1)
  const kind = draw(9)
  if (kind < 5) {
    const [green] = next.splice(from, 1)
    if (green !== undefined) next.splice(to, 0, green)
  } else if (kind < 9) {
    const a = next[from]
    const b = next[to]
    if (a !== undefined && b !== undefined) {
      next[from] = b
      next[to] = a
    }
  } else {
    const low = Math.min(from, to)
    const part = next.slice(low, Math.max(from, to) + 1).reverse()
    next.splice(low, part.length, ...part)
  }
  return next
}

/**
 * Where the search is led among schedules that are equal in what comes before the finish: the mean finishing minute of the greens, and a quarter of
 * the last. The last one alone is a plateau: most exchanges leave it where it is, though they bring a whole day nearer to being spared.
 */
const guideOf = ({ growing }: Generated, score: Score): number => {
  const sum = growing.inWork.reduce((more, { end }) => more + end, 0)
  return sum / Math.max(1, growing.inWork.length) + score.finishMin / 4
}

/** How far behind the record of the guide a current order may fall, minutes (record-to-record travel, Dueck 1993). */
const RECORD_SLACK_MIN = 20

/** Below 0 when `a` is better in what comes before the finish, 0 when they are equal there. */
const beforeFinish = (a: Candidate, b: Candidate): number => {
  const plain = { finishMin: 0, overtimeMin: 0, travelMin: 0 }
  return compareScores({ ...a.score, ...plain }, { ...b.score, ...plain })
}

/** Whether a candidate is the new record: better before the finish, or equal there and better led. */
const isRecord = (candidate: Candidate, record: Candidate): boolean => {
  const before = beforeFinish(candidate, record)
  return before < 0 || (before === 0 && candidate.guide < record.guide)
}

/** Whether a candidate may carry the search on: no worse before the finish, and not far behind in the guide. */
const carriesOn = (candidate: Candidate, record: Candidate): boolean => {
  const before = beforeFinish(candidate, record)
  return before < 0 || (before === 0 && candidate.guide <= record.guide + RECORD_SLACK_MIN)
}

const searchWith = (
  ground: Ground,
  attempts: readonly Attempt[],
  budget: number,
  options: SolveOptions,
  spent: number,
): { readonly best: Candidate; readonly made: number } => {
  const { problem } = ground
  const random = xoroshiro128plus(options.seed)
  const draw = (most: number): number => uniformInt(random, 0, Math.max(0, most))
  let made = 0
  const judge = (order: readonly number[]): Candidate => {
    made++
    const generated = generate(ground, order, attempts)
    const left = generated.left.length + problem.excluded.length
    const score = scoreOf(problem, generated.growing.tasks, left)
    return { order, generated, score, guide: guideOf(generated, score) }
  }
  const [first, ...others] = startOrders(problem)
  let best = judge(first ?? [])
  let current = best
  let record = best
  const consider = (candidate: Candidate): void => {
    if (carriesOn(candidate, record)) current = candidate
    if (isRecord(candidate, record)) record = candidate
    if (compareScores(candidate.score, best.score) >= 0) return
    best = candidate
    options.onProgress?.({ schedules: spent + made, best: best.score })
  }
  for (const order of others) if (made < budget) consider(judge(order))
  while (made < budget && problem.greens.length > 1) consider(judge(neighbour(current.order, draw)))
  return { best, made }
}

/**
 * Searches for a good schedule: constructive orders first, then local search over the order of greens (record-to-record travel).
 * Attempts that cost more (a night, a fixture) are only allowed when the kinder ones leave greens out, and only taken when they leave out fewer.
 */
export const solve = (problem: Problem, options: SolveOptions): Solved => {
  const ground = groundOf(problem)
  const sets = attemptSets(problem)
  let made = 0
  let best: Candidate | null = null
  for (const [index, attempts] of sets.entries()) {
    const budget = index === 0 ? options.schedules : Math.max(1, Math.floor(options.schedules / 2))
    const found = searchWith(ground, attempts, budget, options, made)
    made += found.made
    if (best === null || compareScores(found.best.score, best.score) < 0) best = found.best
    if (best.generated.left.length === 0) break
  }
  const tasks = [...(best?.generated.growing.tasks ?? [])].sort(
    (a, b) => a.startMin - b.startMin || a.finishMin - b.finishMin || (a.machine ?? -1) - (b.machine ?? -1),
  )
  const unplanned = (best?.generated.left ?? []).map((green) => ({ green, ...whyLeft(ground, green) }))
  const score = best?.score ?? scoreOf(problem, [], problem.greens.length + problem.excluded.length)
  return { schedule: { tasks, unplanned }, score, schedules: made }
}
