import { fail, ok, type Result } from '../result.ts'

declare const lonLatBrand: unique symbol

/** A checked place on WGS84, in decimal degrees; made only by `lonLat`. Never mixed with local metres. */
export type LonLat = {
  readonly lonDeg: number
  readonly latDeg: number
  readonly [lonLatBrand]: true
}

/** A point of a local metric plane: metres east and north of that plane's origin. */
export type LocalPoint = { readonly x: number; readonly y: number }

/** A flat metric map of the ground round one origin. */
export type Plane = {
  readonly origin: LonLat
  /** Degrees to local metres. */
  readonly toLocal: (place: LonLat) => LocalPoint
  /** Local metres to degrees. */
  readonly toLonLat: (point: LocalPoint) => LonLat
}

/** Why a pair of degrees is refused. */
export type LonLatError = {
  readonly type: 'outOfRange'
  readonly field: 'lonDeg' | 'latDeg'
  readonly unit: 'deg'
  readonly min: number
  readonly max: number
  readonly received: number
}

/** Latitudes past this are refused: no golf there, and east loses its meaning at the pole. */
const MAX_LATITUDE_DEG = 85

/** WGS84 semi-major axis, m, and flattening (NIMA TR8350.2, table 3.1). */
const SEMI_MAJOR_AXIS_M = 6_378_137
const FLATTENING = 1 / 298.257223563
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING)

const RADIANS_PER_DEGREE = Math.PI / 180

/** The error left after k rounds shrinks by about distance / earth radius a round; six rounds reach rounding even at 50 km. */
const INVERSE_ROUNDS = 6

/** A checked place. Accepts longitude -180 to 180 and latitude -85 to 85 degrees; else `outOfRange`. */
export const lonLat = (lonDeg: number, latDeg: number): Result<LonLat, LonLatError> => {
  const refused = (field: 'lonDeg' | 'latDeg', max: number, received: number) =>
    fail({ type: 'outOfRange' as const, field, unit: 'deg' as const, min: -max, max, received })
  if (!(Math.abs(lonDeg) <= 180)) return refused('lonDeg', 180, lonDeg)
  if (!(Math.abs(latDeg) <= MAX_LATITUDE_DEG)) return refused('latDeg', MAX_LATITUDE_DEG, latDeg)
  return ok(trusted(lonDeg, latDeg))
}

const trusted = (lonDeg: number, latDeg: number): LonLat => ({ lonDeg, latDeg }) as LonLat

/** Radius of curvature in the prime vertical, m. `N = a / sqrt(1 - e^2 sin^2 phi)` */
const primeVerticalM = (sinLat: number): number =>
  SEMI_MAJOR_AXIS_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * sinLat * sinLat)

/**
 * The plane that touches WGS84 at `origin`; places are dropped onto it along its own upright.
 *
 * `x = N cos(phi) sin(dLambda)`; `y = (1 - e^2)(N sin(phi) - N0 sin(phi0)) cos(phi0) - (N cos(phi) cos(dLambda) - N0 cos(phi0)) sin(phi0)`
 * (east and north rows of the geocentric to topocentric rotation at height 0: IOGP 373-7-2, methods 9836 and 9837).
 * Lengths fall short by about `(d / R)^2 / 2`: 1e-8 at 1 km, 3e-7 at 5 km, so one plane serves a whole course.
 */
export const planeAt = (origin: LonLat): Plane => {
  const phi0 = origin.latDeg * RADIANS_PER_DEGREE
  const sin0 = Math.sin(phi0)
  const cos0 = Math.cos(phi0)
  const n0 = primeVerticalM(sin0)

  const forward = (lonDeg: number, latDeg: number): LocalPoint => {
    const phi = latDeg * RADIANS_PER_DEGREE
    const dLambda = (lonDeg - origin.lonDeg) * RADIANS_PER_DEGREE
    const n = primeVerticalM(Math.sin(phi))
    const outM = n * Math.cos(phi) * Math.cos(dLambda) - n0 * cos0
    const upM = (1 - ECCENTRICITY_SQUARED) * (n * Math.sin(phi) - n0 * sin0)
    return { x: n * Math.cos(phi) * Math.sin(dLambda), y: upM * cos0 - outM * sin0 }
  }

  const toLonLat = (point: LocalPoint): LonLat => {
    let { lonDeg, latDeg } = origin
    for (let round = 0; round < INVERSE_ROUNDS; round++) {
      const seen = forward(lonDeg, latDeg)
      const sinLat = Math.sin(latDeg * RADIANS_PER_DEGREE)
      const n = primeVerticalM(sinLat)
      const meridianM = (n * (1 - ECCENTRICITY_SQUARED)) / (1 - ECCENTRICITY_SQUARED * sinLat * sinLat)
      latDeg += (point.y - seen.y) / meridianM / RADIANS_PER_DEGREE
      lonDeg += (point.x - seen.x) / (n * Math.cos(latDeg * RADIANS_PER_DEGREE)) / RADIANS_PER_DEGREE
    }
    return trusted(lonDeg, latDeg)
  }

  return { origin, toLocal: (place) => forward(place.lonDeg, place.latDeg), toLonLat }
}
