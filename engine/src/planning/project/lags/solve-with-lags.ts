import type { Project } from '../project.ts'
import { budgetOf, type Budget } from '../../search/budget.ts'
import { randomOf, type Random } from '../../search/random.ts'
import { bump, fade, putBack, scoresOf, takeEarliest, takeHighest, type Scores } from './branching.ts'
import { pairsOf } from './pairs.ts'
import { lowerLatest, propagationOf, raiseEarliest, temporalNetworkOf } from './temporal-network.ts'
import {
  assertAtRoot,
  climbTo,
  descend,
  learnFromClash,
  propagate,
  propagateRoot,
  tidy,
  treeOf,
  type Tree,
} from './tree.ts'

export type LagsOptions = { readonly schedules: number; readonly seed: number; readonly stop?: () => boolean }
export type LagsResult = {
  readonly starts: Int32Array | null
  readonly makespan: number | null
  readonly schedules: number
  readonly infeasibleProven: boolean
  readonly optimal: boolean
  readonly info: unknown
}

const horizonOf = (project: Project): number => {
  const most = Int32Array.from(project.durations)
  for (let a = 0; a < project.lagFrom.length; a++)
    most[project.lagFrom[a]!] = Math.max(most[project.lagFrom[a]!]!, project.lagMin[a]!)
  return most.reduce((s, x) => s + x, 0)
}

const luby = (i: number): number => {
  let k = 1
  while ((1 << k) - 1 < i) k++
  return (1 << k) - 1 === i ? 1 << (k - 1) : luby(i - (1 << (k - 1)) + 1)
}

export const solveWithLags = (project: Project, { schedules, seed, stop }: LagsOptions): LagsResult => {
  const n = project.durations.length
  const budget: Budget = budgetOf({ schedules, activities: n, ...(stop ? { stop } : {}) })
  const random: Random = randomOf(seed)
  const result = (starts: Int32Array | null, proven: boolean, info: unknown): LagsResult => ({
    starts,
    makespan: starts ? starts[n - 1]! : null,
    schedules: budget.schedules(),
    infeasibleProven: proven && !starts,
    optimal: proven && starts !== null,
    info,
  })
  const pairs = pairsOf(project)
  if (pairs === null) return result(null, true, 'cycle')
  const H = horizonOf(project)
  const net = temporalNetworkOf(n, pairs.arcs)
  const buf = propagationOf(n)
  const earliest = new Int32Array(n)
  const latest = new Int32Array(n).fill(H)
  const all = Int32Array.from({ length: n }, (_, i) => i)
  if (!raiseEarliest(net, earliest, all, buf) || !lowerLatest(net, latest, all, buf))
    return result(null, true, 'cycle')
  for (let i = 0; i < n; i++) if (earliest[i]! > latest[i]!) return result(null, true, 'window')
  const tree: Tree = treeOf(project, pairs, earliest, latest)
  const end = n - 1
  const scores: Scores = scoresOf(tree.bounds.value.length / 2, random)
  let best: Int32Array | null = null
  let clashes = 0
  let restarts = 0
  const info = { clashes: 0, restarts: 0, decisions: 0, first: 0, pairs: pairs.first.length, sols: 0 }
  if (!propagateRoot(tree)) return result(null, true, 'root')
  const fixAtRoot = () => {
    climbTo(tree, 0)
  }
  const done = () => {
    info.clashes = clashes
    info.restarts = restarts
    return info
  }
  for (;;) {
    restarts++
    fixAtRoot()
    tidy(tree, clashes, 4000)
    for (let v = 0; v < scores.place.length; v++) putBack(scores, v)
    const limit = clashes + 100 * luby(restarts)
    const useEarliest = best === null ? restarts % 2 === 1 : false
    for (;;) {
      tree.bounds.fixed = 0
      const clean = propagate(tree)
      budget.spend(Math.max(1, tree.bounds.fixed))
      if (!clean) {
        clashes++
        const ok = learnFromClash(tree, clashes, (side) => bump(scores, side >> 1))
        if (!ok) return result(best, true, done())
        fade(scores)
        // reopen
        for (let v = 0; v < scores.place.length; v++)
          if (scores.place[v]! < 0 && tree.bounds.value[2 * v] !== -tree.bounds.value[2 * v + 1]!)
            putBack(scores, v)
        continue
      }
      if (budget.isOver()) return result(best, false, done())
      if (clashes >= limit) break
      const v = useEarliest ? takeEarliest(scores, tree.bounds) : takeHighest(scores, tree.bounds)
      if (v < 0) {
        let full = true
        for (let a = 0; a < n; a++)
          if (tree.bounds.value[2 * a]! !== -tree.bounds.value[2 * a + 1]!) full = false
        if (!full) throw new Error('not full')
        best = Int32Array.from({ length: n }, (_, a) => tree.bounds.value[2 * a]!)
        info.sols++
        if (info.first === 0) info.first = budget.schedules()
        if (!assertAtRoot(tree, 2 * end + 1, -(best[end]! - 1))) return result(best, true, done())
        for (let u = 0; u < scores.place.length; u++) putBack(scores, u)
        continue
      }
      info.decisions++
      const { value } = tree.bounds
      if (v < n) descend(tree, 2 * v + 1, -value[2 * v]!)
      else {
        const p = v - n
        const a = pairs.first[p]!
        const b = pairs.second[p]!
        const aFirst = best
          ? best[a]! < best[b]!
          : value[2 * a]! - value[2 * a + 1]! <= value[2 * b]! - value[2 * b + 1]!
        if (aFirst) descend(tree, 2 * v, 1)
        else descend(tree, 2 * v + 1, 0)
      }
    }
  }
}
