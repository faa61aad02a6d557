import type { Network } from './network.ts'

/** Units of time and resource that an activity must spend between two moments, wherever within its bounds it lies. */
const mustSpend = (
  head: number,
  tail: number,
  duration: number,
  { from, until, end }: { readonly from: number; readonly until: number; readonly end: number },
): number => {
  const early = head + duration - from
  const late = until - (end - tail)
  return Math.max(0, Math.min(early, late, duration, until - from))
}

/** Moments looked at from either side: more would cost large projects more time than an early end can save them. */
const MOST_MOMENTS = 128

const distinct = (times: Iterable<number>): readonly number[] => {
  const all = [...new Set(times)].sort((a, b) => a - b)
  const every = Math.ceil(all.length / MOST_MOMENTS)
  return all.filter((_, at) => at % every === 0)
}

/**
 * Whether the work that must lie between two moments fits the capacities, for all pairs of moments that can bind (earliest starts and latest finishes).
 * Energetic reasoning: Erschler, Lopez and Thuriot 1991; Baptiste, Le Pape and Nuijten, 'Satisfiability tests and time-bound adjustments for cumulative
 * scheduling problems', Annals of Operations Research 92, 1999.
 */
const mayEndBy = (network: Network, end: number): boolean => {
  const { count, durations, forward, backward, uses, capacities } = network
  const heads = backward.tails.map((tail, activity) => tail - durations[activity]!)
  const froms = distinct(heads)
  const untils = distinct(heads.map((_, activity) => end - forward.tails[activity]! + durations[activity]!))
  const work = new Float64Array(capacities.length)
  for (const from of froms)
    for (const until of untils) {
      if (until <= from) continue
      work.fill(0)
      for (let activity = 0; activity < count; activity++) {
        const time = mustSpend(heads[activity]!, forward.tails[activity]!, durations[activity]!, {
          from,
          until,
          end,
        })
        if (time === 0) continue
        for (let resource = 0; resource < work.length; resource++)
          work[resource]! += time * uses[activity * work.length + resource]!
      }
      for (let resource = 0; resource < work.length; resource++)
        if (work[resource]! > capacities[resource]! * (until - from)) return false
    }
  return true
}

/**
 * A makespan that no schedule can beat: the critical path, raised as long as energetic reasoning shows that the work does not fit. Nothing of it comes
 * from a file. The search ends when it is met.
 */
export const lowerBoundOf = (network: Network): number => {
  const criticalPath = Math.max(...network.forward.tails)
  // What fits in some time fits in more, so the least end that may hold is found by halving.
  let refuted = criticalPath - 1
  let open = criticalPath
  for (let step = 1; !mayEndBy(network, open); step *= 2) {
    refuted = open
    open += step
  }
  while (open - refuted > 1) {
    const middle = Math.floor((open + refuted) / 2)
    if (mayEndBy(network, middle)) open = middle
    else refuted = middle
  }
  return open
}
