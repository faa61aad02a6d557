/** Solar constant, MJ/m2/min. FAO-56 equation 21. */
const SOLAR_CONSTANT = 0.082
/** Stefan-Boltzmann constant, MJ/K4/m2/day. FAO-56 equation 39. */
const STEFAN_BOLTZMANN_DAY = 4.903e-9
/** Share of the sun's radiation that a green crop throws back. FAO-56 equation 38. */
const ALBEDO = 0.23
/** Zero of the Celsius scale as FAO-56 equation 39 rounds it, K. */
const KELVIN = 273.16
/** Water evaporated by one MJ/m2, mm: 1 / 2.45. FAO-56 equation 20. */
export const MM_PER_MJ = 0.408
/** One W/m2 kept up for an hour, MJ/m2. */
export const MJ_PER_WH = 0.0036

/** Degrees as radians. */
export const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** Earth-sun distance factor, dimensionless, for a day of the year 1 to 366. FAO-56 equation 23. */
export const inverseDistance = (dayOfYear: number): number =>
  1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365)

/** Declination of the sun, radians. FAO-56 equation 24. */
export const declinationRad = (dayOfYear: number): number =>
  0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39)

/** Hour angle at which the sun sets, radians: 0 in polar night, pi in polar day. FAO-56 equation 25, held inside its range. */
export const sunsetAngleRad = (latitudeRad: number, declination: number): number =>
  Math.acos(Math.max(-1, Math.min(1, -Math.tan(latitudeRad) * Math.tan(declination))))

/** Radiation above the atmosphere on a flat square metre in a day, MJ/m2. FAO-56 equation 21. */
export const extraterrestrialDayMJ = (dayOfYear: number, latitudeDeg: number): number => {
  const latitude = radians(latitudeDeg)
  const declination = declinationRad(dayOfYear)
  const sunset = sunsetAngleRad(latitude, declination)
  return (
    ((24 * 60) / Math.PI) *
    SOLAR_CONSTANT *
    inverseDistance(dayOfYear) *
    (sunset * Math.sin(latitude) * Math.sin(declination) +
      Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset))
  )
}

/** Daylight hours as FAO-56 equation 34 counts them: sun's centre on a flat horizon without refraction, so 0.2 to 0.4 h less than sunrise to sunset. */
export const dayLengthHours = (dayOfYear: number, latitudeDeg: number): number =>
  (24 / Math.PI) * sunsetAngleRad(radians(latitudeDeg), declinationRad(dayOfYear))

/** Seasonal correction of solar time, hours. FAO-56 equations 32 and 33. */
export const seasonalCorrectionHours = (dayOfYear: number): number => {
  const b = (2 * Math.PI * (dayOfYear - 81)) / 364
  return 0.1645 * Math.sin(2 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b)
}

/** Hour angle of the sun at a time of UTC (hours, its middle for a period), radians. Longitude east positive. FAO-56 equation 31 with Lz = 0. */
export const hourAngleRad = (dayOfYear: number, utcHours: number, longitudeDeg: number): number => {
  const solar = utcHours + longitudeDeg / 15 + seasonalCorrectionHours(dayOfYear)
  const wrapped = ((((solar - 12) % 24) + 36) % 24) - 12
  return (Math.PI / 12) * wrapped
}

/** Radiation above the atmosphere in one hour whose middle has this hour angle, MJ/m2; the parts before sunrise and after sunset cut off. FAO-56 equation 28. */
export const extraterrestrialHourMJ = (
  dayOfYear: number,
  latitudeDeg: number,
  middleAngleRad: number,
): number => {
  const latitude = radians(latitudeDeg)
  const declination = declinationRad(dayOfYear)
  const sunset = sunsetAngleRad(latitude, declination)
  const from = Math.max(-sunset, Math.min(sunset, middleAngleRad - Math.PI / 24))
  const to = Math.max(-sunset, Math.min(sunset, middleAngleRad + Math.PI / 24))
  return (
    ((12 * 60) / Math.PI) *
    SOLAR_CONSTANT *
    inverseDistance(dayOfYear) *
    ((to - from) * Math.sin(latitude) * Math.sin(declination) +
      Math.cos(latitude) * Math.cos(declination) * (Math.sin(to) - Math.sin(from)))
  )
}

/** Radiation on the ground under a clear sky, same unit as `extraterrestrial`. FAO-56 equation 37. */
export const clearSky = (extraterrestrial: number, altitudeM: number): number =>
  (0.75 + 2e-5 * altitudeM) * extraterrestrial

/** Radiation on the ground from hours of bright sunshine, MJ/m2/day. FAO-56 equation 35 (as = 0.25, bs = 0.50). */
export const radiationFromSunshineMJ = (
  sunshineHours: number,
  possibleHours: number,
  extraterrestrialMJ: number,
): number =>
  (0.25 + 0.5 * (possibleHours > 0 ? Math.min(1, sunshineHours / possibleHours) : 0)) * extraterrestrialMJ

/** Radiation on the ground from the day's range of temperature, MJ/m2/day. FAO-56 equation 50; kRs 0.16 inland, 0.19 by the coast. The caller caps it at clear sky. */
export const radiationFromRangeMJ = (rangeC: number, extraterrestrialMJ: number, kRs: number): number =>
  kRs * Math.sqrt(Math.max(0, rangeC)) * extraterrestrialMJ

/** Short-wave radiation that stays, same unit as given. FAO-56 equation 38. */
export const netShortwave = (solar: number): number => (1 - ALBEDO) * solar

/**
 * What the sky and the air's moisture leave of long-wave loss: the last two factors of FAO-56 equation 39. The ratio of solar to clear-sky
 * radiation is held in [0.3, 1]: at most 1 as FAO-56 says, at least 0.3 as ASCE 2005 does (from memory), since under black cloud the
 * formula would have the sky warm the ground.
 */
const longwaveFactor = (vapourPressureKPa: number, clearness: number): number =>
  (0.34 - 0.14 * Math.sqrt(vapourPressureKPa)) * (1.35 * Math.max(0.3, Math.min(1, clearness)) - 0.35)

/** Net long-wave loss in a day, MJ/m2. `clearness` is solar over clear-sky radiation. FAO-56 equation 39. */
export const netLongwaveDayMJ = (
  minC: number,
  maxC: number,
  vapourPressureKPa: number,
  clearness: number,
): number =>
  STEFAN_BOLTZMANN_DAY *
  (((maxC + KELVIN) ** 4 + (minC + KELVIN) ** 4) / 2) *
  longwaveFactor(vapourPressureKPa, clearness)

/** Net long-wave loss in an hour, MJ/m2. FAO-56 equation 39 with the constant divided by 24, as example 19 does. */
export const netLongwaveHourMJ = (meanC: number, vapourPressureKPa: number, clearness: number): number =>
  (STEFAN_BOLTZMANN_DAY / 24) * (meanC + KELVIN) ** 4 * longwaveFactor(vapourPressureKPa, clearness)
