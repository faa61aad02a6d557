import type { Acceptance } from './acceptance.ts'
import type { Budget } from './budget.ts'

/**
 * A search that walks from one solution to the next. The walker owns the solutions (in buffers that it may swap, so that a step
 * allocates nothing); the walk only sees their costs.
 */
export type Walker = {
  /** Makes a candidate from the current solution, spends the budget for it, and tells its cost (a whole number). */
  readonly propose: () => number
  /** The candidate becomes the current solution. */
  readonly take: () => void
  /** The candidate is the best so far: remember it. Called before `take`. */
  readonly keep: () => void
}

/** The rules of one walk. */
export type WalkRules = {
  readonly budget: Budget
  readonly accepts: Acceptance
  /** Cost of the solution that the walk starts from. */
  readonly firstCost: number
  /** A proven lower bound: the walk ends when it is met. */
  readonly floor?: number
  /** Steps without a new best after which the walk gives up, so that its caller may start again elsewhere. */
  readonly patience?: number
}

/** Walks until the budget is over, the floor is met or patience is at its end; the least cost met, `firstCost` if nothing beat it. */
export const walk = (walker: Walker, rules: WalkRules): number => {
  const { budget, accepts, floor = -Infinity, patience = Infinity } = rules
  let current = rules.firstCost
  let best = rules.firstCost
  let idle = 0
  while (best > floor && idle < patience && !budget.isOver()) {
    const cost = walker.propose()
    idle++
    const accepted = accepts(cost, current, best)
    if (cost < best) {
      best = cost
      idle = 0
      walker.keep()
    }
    if (!accepted) continue
    current = cost
    walker.take()
  }
  return best
}
