import type { CalculationError } from '../catalogue/errors.ts'
import type { Course } from '../course/course.ts'
import type { Operation } from '../planning/operations.ts'
import { ok, type Result } from '../result.ts'
import { weatherSettings, type WeatherSettings } from './weather-settings.ts'
import { STOPS_OF, type Stop } from './workable-rules.ts'

/** Where the weather of a course is judged, by the club's own thresholds. */
export type CourseWeather = {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly altitudeM: number
  readonly settings: WeatherSettings
  readonly stopsOf: Readonly<Record<Operation, readonly Stop[]>>
}

/** Reads place, thresholds and stops out of a course. Wind only stops sand that is thrown: a course without a spinner dresses in any wind. Errors: a threshold out of range. */
export const weatherOfCourse = (course: Course): Result<CourseWeather, CalculationError> => {
  const settings = weatherSettings({
    ...course.settings.weather,
    rainStopMmPerH: course.settings.rainStopMmPerH,
  })
  if (!settings.ok) return settings
  const [longitudeDeg, latitudeDeg] = course.greens[0]?.at ?? [0, 0]
  const throws = course.machines.some((machine) => machine.kind === 'dresser' && machine.spinner === true)
  return ok({
    latitudeDeg,
    longitudeDeg,
    altitudeM: course.altitudeM,
    settings: settings.value,
    stopsOf: throws ? STOPS_OF : { ...STOPS_OF, dress: STOPS_OF.dress.filter((stop) => stop !== 'wind') },
  })
}
