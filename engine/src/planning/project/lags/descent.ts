import type { Budget } from '../../search/budget.ts'
import { bump, fade, putBack, takeEarliest, takeHighest, type Scores } from './branching.ts'
import { ask, missed, reached, type Goal } from './goal.ts'
import type { Root } from './root.ts'
import { assertAtRoot, climbTo, descend, learnFromClash, propagate, tidy } from './tree.ts'

/** A search under way. */
export type Quest = {
  readonly root: Root
  readonly scores: Scores
  readonly budget: Budget
  readonly goal: Goal
  /** Starts of the best schedule, the end's too; `hasBest` tells whether there is one. */
  readonly best: Int32Array
  hasBest: boolean
  clashes: number
}

/** How a descent ended: nothing better exists; the budget is over; or it met as many clashes as it may. */
export type DescentEnd = 'closed' | 'over' | 'clashes'

/** Learnt nogoods kept over a restart. */
const MOST_NOGOODS = 4000

/** Open variables that a way up has opened again come back in the heap. */
const reopen = ({ root, scores }: Quest): void => {
  const { value } = root.tree.bounds
  for (let variable = 0; variable < scores.place.length; variable++)
    if (scores.place[variable]! < 0 && value[2 * variable]! !== -value[2 * variable + 1]!)
      putBack(scores, variable)
}

/** Learns from a clash. False = nothing better exists. */
const backtrack = (quest: Quest): boolean => {
  quest.clashes++
  const isOpen = learnFromClash(quest.root.tree, quest.clashes, (side) => bump(quest.scores, side >> 1))
  fade(quest.scores)
  reopen(quest)
  return isOpen
}

/**
 * Decides a start. Without a schedule: as early as may be. With one: not before the best schedule has it, so that a descent stays near the best
 * where nothing learnt speaks against it (solution-based phase saving: Demirovic, Chu and Stuckey 2018); then as early as may be.
 */
const decideStart = ({ root, scores, hasBest, best }: Quest, activity: number): void => {
  const { value } = root.tree.bounds
  const earliest = value[2 * activity]!
  const wanted = best[activity]!
  const isLater = hasBest && wanted > earliest && wanted <= -value[2 * activity + 1]!
  if (isLater) descend(root.tree, 2 * activity, wanted)
  else descend(root.tree, 2 * activity + 1, -earliest)
  if (value[2 * activity]! !== -value[2 * activity + 1]!) putBack(scores, activity)
}

/** Decides the order of a pair: as in the best schedule; without one, the activity first whose window lies earlier. */
const decideOrder = ({ root, hasBest, best }: Quest, variable: number): void => {
  const { value, activities } = root.tree.bounds
  const first = root.pairs.first[variable - activities]!
  const second = root.pairs.second[variable - activities]!
  const middle = (activity: number): number => value[2 * activity]! - value[2 * activity + 1]!
  const isFirst = hasBest ? best[first]! < best[second]! : middle(first) <= middle(second)
  descend(root.tree, isFirst ? 2 * variable : 2 * variable + 1, isFirst ? 1 : 0)
}

/** At the top of a descent: asks for a makespan well below the best. False where there is none to ask for. */
const decideGoal = ({ root, goal }: Quest): boolean => {
  const { value } = root.tree.bounds
  const wanted = ask(goal, value[2 * root.end]!, -value[2 * root.end + 1]!)
  if (wanted === null) return false
  descend(root.tree, 2 * root.end + 1, -wanted)
  return true
}

/** Goes one decision deeper; false when all is decided. `isByTime` places activities in order of time, as a serial generation does. */
const branch = (quest: Quest, isByTime: boolean): boolean => {
  const { root, scores, hasBest } = quest
  const { bounds } = root.tree
  if (hasBest && bounds.level === 0 && decideGoal(quest)) return true
  const variable = isByTime ? takeEarliest(scores, bounds) : takeHighest(scores, bounds)
  if (variable < 0) return false
  if (variable < bounds.activities) decideStart(quest, variable)
  else decideOrder(quest, variable)
  return true
}

/** Keeps the schedule just completed and asks for a shorter one. False = there is none. */
const keep = (quest: Quest): boolean => {
  const { root, best, goal } = quest
  for (let activity = 0; activity < best.length; activity++)
    best[activity] = root.tree.bounds.value[2 * activity]!
  quest.hasBest = true
  reached(goal)
  const isOpen = assertAtRoot(root.tree, 2 * root.end + 1, 1 - best[root.end]!)
  reopen(quest)
  return isOpen
}

/** Pays for what the last propagation placed: each start that became fixed; a node that fixed none counts as one. */
const pay = ({ root, budget }: Quest): void => {
  budget.spend(Math.max(1, root.tree.bounds.fixed))
  root.tree.bounds.fixed = 0
}

/** Searches from the root until so many more clashes. */
export const descent = (quest: Quest, clashes: number, isByTime: boolean): DescentEnd => {
  const { tree } = quest.root
  climbTo(tree, 0)
  tidy(tree, quest.clashes, MOST_NOGOODS)
  reopen(quest)
  missed(quest.goal)
  const limit = quest.clashes + clashes
  for (;;) {
    const isClean = propagate(tree)
    pay(quest)
    if (!isClean) {
      if (!backtrack(quest)) return 'closed'
    } else {
      if (quest.clashes >= limit) return 'clashes'
      if (!branch(quest, isByTime && !quest.hasBest) && !keep(quest)) return 'closed'
    }
    if (quest.budget.isOver()) return 'over'
  }
}
