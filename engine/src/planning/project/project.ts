/**
 * A project as the published sets have it: activities with fixed durations that share renewable resources.
 * Activities count from 0; the first and the last are dummies without duration. Whole time units.
 */
export type Project = {
  /** Time units of each activity. */
  readonly durations: Int32Array
  /** Units of each resource, from time 0 on. */
  readonly capacities: Int32Array
  /** Use of resources: row `activity * capacities.length + resource`. */
  readonly demands: Int32Array
  /**
   * Start-to-start lags as an arc list: start[to] >= start[from] + least. A negative `least` from b to a bounds b from above:
   * it is a maximum lag from a to b. A plain precedence is an arc of the duration of its first activity.
   */
  readonly lagFrom: Int32Array
  readonly lagTo: Int32Array
  readonly lagMin: Int32Array
  /** Whether any lag is a maximum lag (negative): then a schedule may not exist at all. */
  readonly hasMaxLags: boolean
}
