import type { ProblemDay } from '../problem.ts'

/** Index of the day in which a minute lies; -1 before the first, the number of days after the last. */
export const dayOfStart = (days: readonly ProblemDay[], min: number): number => {
  const index = days.findIndex(({ endMin }) => min < endMin)
  if (index < 0) return days.length
  return min < (days[index]?.startMin ?? 0) ? -1 : index
}

/** The same for the moment at which something ends: midnight exactly belongs to the day that ends. */
export const dayOfFinish = (days: readonly ProblemDay[], min: number): number => {
  const index = days.findIndex(({ endMin }) => min <= endMin)
  if (index < 0) return days.length
  return min <= (days[index]?.startMin ?? 0) ? -1 : index
}
