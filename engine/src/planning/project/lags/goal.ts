/**
 * How far below the best makespan the search dares to ask. A makespan asked for is an ordinary decision at the top of the tree, so whatever is
 * learnt below it stays true. After a success the next step is twice as long, after a failure half.
 */
export type Goal = {
  /** Time units below the best makespan; 0 = not set yet. */
  step: number
  /** Whether the present descent began with such a decision. */
  isAsked: boolean
}

/** No step yet. */
export const goalOf = (): Goal => ({ step: 0, isAsked: false })

/** The makespan to ask for when it lies from `least` to `most`; null where nothing shorter than `most` is left to ask. */
export const ask = (goal: Goal, least: number, most: number): number | null => {
  if (goal.step === 0) goal.step = Math.max(1, (most - least) >> 2)
  const wanted = Math.max(least, most + 1 - goal.step)
  goal.isAsked = true
  return wanted < most ? wanted : null
}

/** A schedule was found. */
export const reached = (goal: Goal): void => {
  if (goal.isAsked) goal.step *= 2
  goal.isAsked = false
}

/** A descent ended without a schedule. */
export const missed = (goal: Goal): void => {
  if (goal.isAsked) goal.step = Math.max(1, goal.step >> 1)
  goal.isAsked = false
}

/** The series 1 1 2 1 1 2 4 1 1 2 ... from index 1, by which the length of descents grows (Luby, Sinclair and Zuckerman 1993). */
export const lubyTerm = (index: number): number => {
  let rank = 1
  while (2 ** rank - 1 < index) rank++
  return 2 ** rank - 1 === index ? 2 ** (rank - 1) : lubyTerm(index - 2 ** (rank - 1) + 1)
}
