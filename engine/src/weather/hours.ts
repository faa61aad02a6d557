/** Milliseconds in an hour. */
export const HOUR_MS = 3_600_000

/**
 * Hours of weather as columns. Row `member * hours + h` describes the hour from `startMs + h * HOUR_MS` to one hour later.
 * A value that the source does not give is NaN. One member for a plain forecast or a record; many for an ensemble.
 */
export type WeatherHours = {
  /** Start of the first hour, epoch milliseconds. */
  readonly startMs: number
  /** Hours in each member. */
  readonly hours: number
  /** Members, at least 1. */
  readonly members: number
  /** Rain fallen in the hour, mm. */
  readonly rainMm: Float64Array
  /** Mean air temperature of the hour at 2 m, degrees C. */
  readonly temperatureC: Float64Array
  /** Mean dew point of the hour at 2 m, degrees C. */
  readonly dewPointC: Float64Array
  /** Mean wind at 10 m, m/s. */
  readonly windMPerS: Float64Array
  /** Highest gust of the hour at 10 m, m/s. */
  readonly gustMPerS: Float64Array
  /** Mean global radiation of the hour, W/m2. */
  readonly radiationWPerM2: Float64Array
}
