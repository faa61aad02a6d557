import type { Problem } from '../problem.ts'

/** Orders worth starting from: as the course is walked, the weak ones first, the longest chains first and last, the nearest to the shed first. */
export const startOrders = (problem: Problem): readonly (readonly number[])[] => {
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
