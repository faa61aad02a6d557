import type { Project } from './project.ts'

/**
 * Earliest starts when only the lags count: the longest path from time 0 to each activity, over maximum lags too (Bellman and Ford); null when
 * the lags go round in a circle that never comes to rest, so that no schedule exists. The critical path is the latest of their finishes.
 */
export const earliestStarts = ({ durations, lagFrom, lagTo, lagMin }: Project): Int32Array | null => {
  const earliest = new Int32Array(durations.length)
  for (let round = 0; round <= durations.length; round++) {
    let moved = false
    for (let arc = 0; arc < lagFrom.length; arc++) {
      const time = earliest[lagFrom[arc]!]! + lagMin[arc]!
      if (time <= earliest[lagTo[arc]!]!) continue
      earliest[lagTo[arc]!] = time
      moved = true
    }
    if (!moved) return earliest
  }
  return null
}
