import type { ProblemTines } from '../problem.ts'

/** Sets under this are rounding: a ten-thousandth, less than any green wears. */
export const SLACK_SETS = 1e-4

/** Sets of a kind that were there at first or had come by a minute. */
export const setsBy = (entries: readonly ProblemTines[], kind: number, minute: number): number =>
  entries
    .filter((entry) => entry.kind === kind)
    .flatMap(({ sets, deliveries }) => [
      sets,
      ...deliveries.filter(({ atMin }) => atMin <= minute).map((delivery) => delivery.sets),
    ])
    .reduce((sum, sets) => sum + sets, 0)
