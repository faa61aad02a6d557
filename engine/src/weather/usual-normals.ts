import type { ClimateNormals } from './normals.ts'

/**
 * Rain mm, days of 1 mm or more, mean minimum and maximum C: means of Dublin Airport 1980-2025 (Met Éireann, CC BY 4.0; our own means of the daily record).
 * Wind m/s at 10 m: means of 1991-2020 of the same record. What a course is shown that has no record of its own: a cool, moist, maritime place, not the course's own.
 */
const MARITIME = [
  [64, 12.3, 2.4, 8.1, 6.3],
  [51, 10.5, 2.4, 8.5, 6.2],
  [55, 11.4, 2.9, 10.2, 5.9],
  [52, 10.3, 3.9, 12.2, 5.3],
  [55, 10.4, 6.5, 15.0, 5.1],
  [64, 10.6, 9.2, 17.7, 4.7],
  [59, 10.7, 11.2, 19.5, 4.7],
  [73, 11.2, 11.0, 19.2, 4.7],
  [64, 10.3, 9.2, 17.0, 4.9],
  [81, 12.2, 7.0, 13.7, 5.4],
  [74, 11.7, 4.4, 10.4, 5.7],
  [72, 12.7, 3.1, 8.6, 6.0],
] as const

/** Normals of a cool maritime climate, laid on a place. */
export const maritimeNormals = (place: {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly altitudeM: number
}): ClimateNormals => ({
  latitudeDeg: place.latitudeDeg,
  longitudeDeg: place.longitudeDeg,
  altitudeM: place.altitudeM,
  // South of the equator the year begins in summer.
  months: MARITIME.map((_, m) => {
    const [rainMm, wetDays, minC, maxC, windMPerS] =
      MARITIME[(m + (place.latitudeDeg < 0 ? 6 : 0)) % 12] ?? MARITIME[0]
    return { rainMm, wetDays, minC, maxC, windMPerS }
  }),
})
