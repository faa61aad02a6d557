/**
 * Whether a candidate may become the current solution of a walk. Costs are whole numbers, less is better; an objective of several parts
 * is packed into one number by its owner (up to 2^53).
 */
export type Acceptance = (candidate: number, current: number, best: number) => boolean

/**
 * Record-to-record travel: no further than `slack` behind the best so far (Dueck, 'New optimization heuristics: the great deluge
 * algorithm and the record-to-record travel', Journal of Computational Physics 104, 1993).
 */
export const recordToRecord =
  (slack: number): Acceptance =>
  (candidate, _current, best) =>
    candidate <= best + slack

/**
 * Late acceptance: no worse than the current solution now, or than it was `memory` steps ago (Burke and Bykov, 'The late acceptance
 * hill-climbing heuristic', European Journal of Operational Research 258, 2017). Carries state: one a walk.
 */
export const lateAcceptance = (memory: number, firstCost: number): Acceptance => {
  const costs = new Float64Array(memory).fill(firstCost)
  let at = 0
  return (candidate, current) => {
    const accepted = candidate <= current || candidate <= (costs[at] ?? current)
    costs[at] = accepted ? candidate : current
    at = at + 1 === memory ? 0 : at + 1
    return accepted
  }
}
