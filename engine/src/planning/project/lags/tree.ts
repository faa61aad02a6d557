import type { Project } from '../project.ts'
import { analystOf, type Analyst } from './analyse.ts'
import { arcsOf, followArcs, followOrder, type Arcs } from './arcs.ts'
import { backTo, boundsOf, decide, raise, REASON, settleRoot, type Bounds } from './bounds.ts'
import { forget, followNogoods, learn, nogoodsOf, type Nogoods } from './nogoods.ts'
import type { Pairs } from './pairs.ts'
import { backToLevel, lookAtLoad, noteChange, openLevel, profileOf, type Profile } from './profile.ts'

/** A search tree over starts and orders: bounds, all that propagates them, and what was learnt. */
export type Tree = {
  readonly bounds: Bounds
  readonly arcs: Arcs
  readonly profile: Profile
  readonly nogoods: Nogoods
  readonly analyst: Analyst
}

/** A tree at its root, before any propagation. Starts lie from `earliest` to `latest`. */
export const treeOf = (project: Project, pairs: Pairs, earliest: Int32Array, latest: Int32Array): Tree => {
  const activities = project.durations.length
  const value = new Int32Array(2 * (activities + pairs.first.length))
  for (let activity = 0; activity < activities; activity++) {
    value[2 * activity] = earliest[activity]!
    value[2 * activity + 1] = -latest[activity]!
  }
  for (let pair = activities; pair < value.length / 2; pair++) value[2 * pair + 1] = -1
  const bounds = boundsOf(value, activities)
  const arcs = arcsOf(pairs, project.durations)
  const profile = profileOf(project, bounds)
  const nogoods = nogoodsOf(value.length)
  return { bounds, arcs, profile, nogoods, analyst: analystOf({ bounds, arcs, profile, nogoods }) }
}

/** Propagates all changes. False on a clash. */
export const propagate = ({ bounds, arcs, profile, nogoods }: Tree): boolean => {
  const { last, seen, value } = bounds
  const starts = 2 * bounds.activities
  profile.overfull = -1
  for (;;) {
    while (bounds.head < bounds.size) {
      const entry = bounds.head++
      const side = bounds.trail.side[entry]!
      // A later change of the same side does the work of both.
      if (last[side] !== entry) continue
      if (side < starts) {
        noteChange(profile, side >> 1)
        if (!followArcs(arcs, bounds, side)) return false
      } else if (!followOrder(arcs, bounds, side)) return false
      if (!followNogoods(nogoods, bounds, side)) return false
      seen[side] = value[side]!
    }
    if (!lookAtLoad(profile, bounds)) return false
    if (bounds.head === bounds.size) return true
  }
}

/** Propagates every arc once, as the root needs it, then all that follows. False = no schedule. */
export const propagateRoot = (tree: Tree): boolean => {
  for (let side = 0; side < 2 * tree.bounds.activities; side++)
    if (!followArcs(tree.arcs, tree.bounds, side)) return false
  return settle(tree)
}

/** Propagates at the root and settles what is true there. False = no schedule. */
const settle = (tree: Tree): boolean => {
  if (!propagate(tree)) return false
  settleRoot(tree.bounds)
  return true
}

/** Goes back up. */
export const climbTo = ({ bounds, profile }: Tree, level: number): void => {
  backToLevel(profile, level, bounds.level)
  backTo(bounds, level)
}

/** Makes a fact true from the root on. False = no schedule. */
export const assertAtRoot = (tree: Tree, side: number, least: number): boolean => {
  climbTo(tree, 0)
  if (tree.bounds.value[side]! >= least) return true
  return raise(tree.bounds, side, least, REASON.decided, 0) && settle(tree)
}

/** Goes one decision deeper. */
export const descend = ({ bounds, profile }: Tree, side: number, least: number): void => {
  openLevel(profile, bounds.level + 1)
  decide(bounds, side, least)
}

/**
 * Learns from a clash, goes back up and makes the learnt fact true there; `onMet` is told of the sides that took part. Propagation is the caller's.
 * False = no schedule.
 */
export const learnFromClash = (tree: Tree, now: number, onMet: (side: number) => void): boolean => {
  const { bounds, profile, nogoods, analyst } = tree
  const present = bounds.level
  const lesson = analyst.analyse(profile.overfull)
  if (lesson.level < 0) return false
  const { facts, count, level, depth, met, metCount } = lesson
  backToLevel(profile, level, present)
  backTo(bounds, level)
  for (let at = 0; at < metCount; at++) onMet(met[at]!)
  const side = facts[0]! ^ 1
  const least = 1 - facts[1]!
  if (count === 1) return raise(bounds, side, least, REASON.decided, 0)
  return raise(bounds, side, least, REASON.nogood, learn(nogoods, facts, count, depth, now))
}

/** At the root: lets go of learnt nogoods that are of little use. */
export const tidy = (tree: Tree, now: number, most: number): void => {
  climbTo(tree, 0)
  if (tree.nogoods.count <= most) return
  forget(tree.nogoods, tree.bounds, (depth, lastUse) => depth <= 3 || now - lastUse < most / 2)
}
