import { OPERATIONS, type Operation } from '../operations.ts'
import type { Problem, Span } from '../problem.ts'
import { intersectSpans, mergeSpans, spansOfHours } from '../spans.ts'
import type { Scenario } from './scenario.ts'

const HOUR_MIN = 60

/** How careful a day of the plan is, from not at all up. */
export type Care = {
  /** An hour counts as wet, or as not workable, when more than this share of the skies makes it so; drying counts as slow as in this share of them. Null: as the forecast has it. */
  readonly share: number | null
  /** Greens are finished by this minute. Null: no limit but the sky's. */
  readonly finishBy: number | null
}

/** No care beyond the forecast. */
export const AS_FORECAST: Care = { share: null, finishBy: null }

/** What many skies say of each hour of the horizon, worked out once. */
export type Shares = {
  readonly hours: number
  /** Share of skies in which the hour has rain. */
  readonly wet: Float64Array
  /** By operation, share of skies in which the whole hour can't be worked. */
  readonly idle: ReadonlyMap<Operation, Float64Array>
  /** By day, the skies' drying (millimetres gone by the end of each of its hours), slowest day first. */
  readonly drying: readonly (readonly Float64Array[])[]
}

/** Adds one for each hour that the spans touch, or, with `whole`, that they cover. */
const countHours = (counts: Float64Array, spans: readonly Span[], whole: boolean): void => {
  for (const { start, end } of spans) {
    const first = whole ? Math.ceil(start / HOUR_MIN) : Math.floor(start / HOUR_MIN)
    const last = whole ? Math.floor(end / HOUR_MIN) : Math.ceil(end / HOUR_MIN)
    for (let hour = first; hour < last; hour++) counts[hour] = (counts[hour] ?? 0) + 1
  }
}

/** Reads the skies hour by hour. At least one. */
export const sharesOf = (problem: Problem, scenarios: readonly Scenario[]): Shares => {
  const hours = Math.ceil(problem.horizonMin / HOUR_MIN)
  const share = (read: (scenario: Scenario) => readonly Span[], whole: boolean): Float64Array => {
    const counts = new Float64Array(hours)
    for (const scenario of scenarios) countHours(counts, read(scenario), whole)
    return counts.map((count) => count / scenarios.length)
  }
  return {
    hours,
    wet: share(({ rain }) => rain, false),
    idle: new Map(
      OPERATIONS.map((operation) => [
        operation,
        share(({ workable }) => workable.get(operation) ?? [], true).map((workable) => 1 - workable),
      ]),
    ),
    drying: problem.days.map(({ startMin, endMin }) => {
      const [first, last] = [Math.floor(startMin / HOUR_MIN), Math.ceil(endMin / HOUR_MIN)]
      return scenarios
        .map(({ driedMm }) => driedMm.slice(first, last + 1).map((mm) => mm - (driedMm[first] ?? 0)))
        .sort((a, b) => (a.at(-1) ?? 0) - (b.at(-1) ?? 0))
    }),
  }
}

/** Flags of the hours in which a share is exceeded, kept to the hours of careful days. */
const over = (shares: Float64Array, limits: Float64Array): Uint8Array =>
  Uint8Array.from(shares, (share, hour) => (share > (limits[hour] ?? 1) ? 1 : 0))

/** Drying of the horizon: careful days as slow as in their share of the skies, the others as the forecast has them. */
const slowDrying = (problem: Problem, shares: Shares, care: readonly Care[]): Float64Array => {
  const dried = Float64Array.from(problem.driedMm)
  problem.days.forEach(({ startMin, endMin }, day) => {
    const [first, last] = [Math.floor(startMin / HOUR_MIN), Math.ceil(endMin / HOUR_MIN)]
    const share = care[day]?.share ?? null
    const ranked = shares.drying[day] ?? []
    const slow = share === null ? undefined : ranked[Math.floor(share * ranked.length)]
    const base = dried[first] ?? 0
    for (let hour = first; hour <= last && hour < dried.length; hour++) {
      const forecast = (problem.driedMm[hour] ?? 0) - (problem.driedMm[first] ?? 0)
      dried[hour] = base + Math.min(forecast, slow?.[hour - first] ?? forecast)
    }
  })
  return dried
}

/**
 * The problem under a sky that is never kinder than the forecast: on careful days hours that some of the skies spoil count as spoilt, drying is slow, and greens
 * are finished by a minute. Any schedule that is clean under it is clean under the forecast.
 */
export const carefulProblem = (problem: Problem, shares: Shares, care: readonly Care[]): Problem => {
  const limits = new Float64Array(shares.hours).fill(1)
  const late = problem.days.flatMap(({ startMin, endMin }, day): readonly Span[] => {
    const { share, finishBy } = care[day] ?? AS_FORECAST
    if (share !== null) limits.fill(share, Math.floor(startMin / HOUR_MIN), Math.ceil(endMin / HOUR_MIN))
    return finishBy === null ? [] : [{ start: finishBy, end: endMin }]
  })
  const wet = spansOfHours(over(shares.wet, limits))
  return {
    ...problem,
    rain: mergeSpans([...problem.rain, ...wet, ...late]),
    workable: new Map(
      [...problem.workable].map(([operation, spans]) => {
        const idle = over(shares.idle.get(operation) ?? new Float64Array(shares.hours), limits)
        const kept = spansOfHours(idle.map((flag) => 1 - flag))
        return [operation, intersectSpans(spans, kept)]
      }),
    ),
    driedMm: slowDrying(problem, shares, care),
  }
}
