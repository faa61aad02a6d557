import { DAY_MS } from '../time/calendar.ts'

/** Sun's position as NOAA's solar calculator has it, after Meeus, Astronomical Algorithms (1998) chapters 25 and 28. Good to 0.01 degree for 1800-2100. */
type SunPosition = {
  /** Declination, radians. */
  readonly declinationRad: number
  /** Sundial time less mean time, minutes. */
  readonly equationOfTimeMin: number
}

const RAD = Math.PI / 180
/** 2000-01-01 12:00 UTC, from which Meeus counts. The 70 s between UTC and ephemeris time move the sun 0.0008 degree and are left out. */
const J2000_MS = Date.UTC(2000, 0, 1, 12)

/** Declination and equation of time at an instant (Meeus 25.2 to 25.8, 28.3). */
export const sunPosition = (epochMs: number): SunPosition => {
  const t = (epochMs - J2000_MS) / (DAY_MS * 36_525)
  const meanLongitude = RAD * (280.46646 + t * (36_000.76983 + 0.0003032 * t))
  const anomaly = RAD * (357.52911 + t * (35_999.05029 - 0.0001537 * t))
  const eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t)
  const centre =
    Math.sin(anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t)) +
    Math.sin(2 * anomaly) * (0.019993 - 0.000101 * t) +
    Math.sin(3 * anomaly) * 0.000289
  const node = RAD * (125.04 - 1934.136 * t)
  const longitude = meanLongitude + RAD * (centre - 0.00569 - 0.00478 * Math.sin(node))
  const obliquity =
    RAD * (23.439291 - t * (0.0130042 + t * (0.00000016 - 0.000000504 * t)) + 0.00256 * Math.cos(node))
  const y = Math.tan(obliquity / 2) ** 2
  const equation =
    y * Math.sin(2 * meanLongitude) -
    2 * eccentricity * Math.sin(anomaly) +
    4 * eccentricity * y * Math.sin(anomaly) * Math.cos(2 * meanLongitude) -
    0.5 * y * y * Math.sin(4 * meanLongitude) -
    1.25 * eccentricity * eccentricity * Math.sin(2 * anomaly)
  return {
    declinationRad: Math.asin(Math.sin(obliquity) * Math.sin(longitude)),
    equationOfTimeMin: (4 * equation) / RAD,
  }
}

/** Height of the sun's centre above a flat horizon at an instant, degrees, without refraction. Latitude north and longitude east positive. */
export const sunAltitudeDeg = (epochMs: number, latitudeDeg: number, longitudeDeg: number): number => {
  const { declinationRad, equationOfTimeMin } = sunPosition(epochMs)
  const sundialMin = (epochMs % DAY_MS) / 60_000 + equationOfTimeMin + 4 * longitudeDeg
  const hourAngle = RAD * (sundialMin / 4 - 180)
  const latitude = RAD * latitudeDeg
  const sine =
    Math.sin(latitude) * Math.sin(declinationRad) +
    Math.cos(latitude) * Math.cos(declinationRad) * Math.cos(hourAngle)
  return Math.asin(Math.max(-1, Math.min(1, sine))) / RAD
}

/** The moment near `epochMs` at which the sun stands highest, epoch ms: where sundial time is noon. */
export const solarNoonNear = (epochMs: number, longitudeDeg: number): number => {
  const middayUtc = Math.floor(epochMs / DAY_MS) * DAY_MS + DAY_MS / 2 - longitudeDeg * 240_000
  const near = middayUtc + Math.round((epochMs - middayUtc) / DAY_MS) * DAY_MS
  return near - sunPosition(near).equationOfTimeMin * 60_000
}
