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
