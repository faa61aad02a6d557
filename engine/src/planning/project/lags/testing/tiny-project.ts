import type { Random } from '../../../search/random.ts'
import type { Project } from '../../project.ts'

/** A project of one or two resources from lists that read well in a test: durations, uses (a row an activity) and lags [from, to, least]. */
export const projectFrom = (given: {
  readonly durations: readonly number[]
  readonly capacities: readonly number[]
  readonly demands: readonly (readonly number[])[]
  readonly lags: readonly (readonly [number, number, number])[]
}): Project => ({
  durations: Int32Array.from(given.durations),
  capacities: Int32Array.from(given.capacities),
  demands: Int32Array.from(given.demands.flat()),
  lagFrom: Int32Array.from(given.lags, ([from]) => from),
  lagTo: Int32Array.from(given.lags, ([, to]) => to),
  lagMin: Int32Array.from(given.lags, ([, , least]) => least),
  hasMaxLags: given.lags.some(([, , least]) => least < 0),
})

/** A few short activities with random lags, about half of them maximum lags. Small enough that all its schedules can be listed. */
export const tinyProject = (random: Random): Project => {
  const real = 3 + random.below(3)
  const last = real + 1
  const durations = Array.from({ length: real + 2 }, (_, a) =>
    a === 0 || a === last ? 0 : 1 + random.below(3),
  )
  const demands = durations.map((duration) =>
    duration === 0 ? [0, 0] : [random.below(4), Math.max(0, random.below(5) - 1)],
  )
  const lags: [number, number, number][] = []
  for (let a = 1; a < last; a++) lags.push([0, a, 0], [a, last, durations[a] ?? 0])
  for (let arc = 0; arc < real; arc++) {
    const a = 1 + random.below(real)
    const b = 1 + random.below(real)
    if (a === b) continue
    if (random.below(2) === 0) lags.push([a, b, random.below(4)])
    else lags.push([b, a, -random.below(5)])
  }
  return projectFrom({ durations, demands, lags, capacities: [3, 3 + random.below(2)] })
}

/**
 * Every schedule of a project whose starts all lie from 0 to `latest`, by plain enumeration: shares nothing with the search. The first activity
 * starts at 0 and the last as early as the others let it. `visit` is given the starts (the same array each time).
 */
export const eachSchedule = (project: Project, latest: number, visit: (starts: Int32Array) => void): void => {
  const { durations, demands, capacities, lagFrom, lagTo, lagMin } = project
  const count = durations.length
  const starts = new Int32Array(count)
  const use = Array.from(capacities, () => new Int32Array(latest + 16))
  /** Books an activity at its start; false when that breaks a capacity or a lag to one placed before. Numbers grow with the order of placing. */
  const book = (activity: number, sign: number): boolean => {
    let fits = true
    for (const [resource, row] of use.entries())
      for (let time = starts[activity]!; time < starts[activity]! + durations[activity]!; time++) {
        row[time]! += sign * demands[activity * capacities.length + resource]!
        if (row[time]! > capacities[resource]!) fits = false
      }
    for (let arc = 0; arc < lagFrom.length; arc++)
      if (Math.max(lagFrom[arc]!, lagTo[arc]!) === activity)
        if (starts[lagTo[arc]!]! < starts[lagFrom[arc]!]! + lagMin[arc]!) fits = false
    return fits
  }
  const place = (activity: number): void => {
    if (activity === count) return visit(starts)
    const isFixed = activity === 0
    const isLast = activity === count - 1
    let earliest = 0
    for (let arc = 0; arc < lagFrom.length; arc++)
      if (lagTo[arc] === activity && lagFrom[arc]! < activity)
        earliest = Math.max(earliest, starts[lagFrom[arc]!]! + lagMin[arc]!)
    for (let start = earliest; start <= (isFixed ? 0 : latest); start++) {
      starts[activity] = start
      const fits = book(activity, 1)
      if (fits) place(activity + 1)
      book(activity, -1)
      if (fits && isLast) return
    }
  }
  place(0)
}
