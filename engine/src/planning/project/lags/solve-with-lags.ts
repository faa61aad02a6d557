import { budgetOf } from '../../search/budget.ts'
import { randomOf } from '../../search/random.ts'
import type { ProjectFound, ProjectSearch } from '../found.ts'
import type { Project } from '../project.ts'
import { scoresOf } from './branching.ts'
import { descent, type DescentEnd, type Quest } from './descent.ts'
import { goalOf, lubyTerm } from './goal.ts'
import { rootOf } from './root.ts'

/** Clashes in the shortest descent. */
const SHORTEST_DESCENT = 30

/** Descents until nothing better exists or the budget is over. Until a first schedule is found, every other one goes by time. */
const search = (quest: Quest): DescentEnd => {
  for (let index = 1; ; index++) {
    const end = descent(quest, SHORTEST_DESCENT * lubyTerm(index), index % 2 === 1)
    if (end !== 'clashes') return end
  }
}

/**
 * Searches a project with minimum and maximum lags: a tree over starts and orders of pairs, in which every clash is explained and learnt from
 * (Schutt, Feydy, Stuckey and Wallace, 'Solving RCPSP/max by lazy clause generation', Journal of Scheduling 16, 2013). docs/maximum-lags.md tells how.
 *
 * A schedule of the budget is as many fixed starts as the project has activities, whether they were decided or followed; a node that fixes none
 * counts as one start. The search ends early when the best is proven shortest, or when it is proven that there is no schedule.
 */
export const solveWithLags = (project: Project, { schedules, seed, stop }: ProjectSearch): ProjectFound => {
  const activities = project.durations.length
  const budget = budgetOf({ schedules, activities, ...(stop && { stop }) })
  const root = rootOf(project)
  if (root === null) return { starts: null, makespan: null, schedules: 0, infeasibleProven: true }
  const { bounds } = root.tree
  const quest: Quest = {
    root,
    scores: scoresOf(bounds.value.length / 2, randomOf(seed)),
    budget,
    goal: goalOf(),
    best: new Int32Array(root.end + 1),
    hasBest: false,
    clashes: 0,
  }
  const end = search(quest)
  const { best, hasBest } = quest
  return {
    starts: hasBest ? best.slice(0, activities) : null,
    makespan: hasBest ? best[root.end]! : null,
    schedules: budget.schedules(),
    infeasibleProven: end === 'closed' && !hasBest,
  }
}
