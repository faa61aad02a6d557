import { fail, ok, type Result } from '../result.ts'
import { assumedFact } from './assumed.ts'
import type { Course, Green, Place } from './course.ts'
import type { CourseError } from './course-error.ts'
import { COURSE_FILE_VERSION, type ClubMember } from './course-file.ts'
import { crossCheck } from './cross-check.ts'
import {
  filledFixtures,
  filledMachines,
  filledPeople,
  filledPlaces,
  filledSettings,
  filledStores,
  filledTineSets,
  filledUnits,
} from './fill-club.ts'
import { slugOf } from './slug.ts'

/** A course that was read, and all that was taken for granted where the file is silent: coded facts, see `COURSE_ASSUMPTIONS`. */
export type CourseReading = { readonly course: Course; readonly assumed: readonly string[] }

/** Greens and places with what was taken for granted about them. */
export type Ground = {
  readonly greens: readonly Green[]
  readonly places: readonly Place[]
  readonly assumed: readonly string[]
}

const middleOf = (greens: readonly Green[]): readonly [number, number] => {
  const mean = (axis: 0 | 1): number =>
    Number((greens.reduce((sum, green) => sum + green.at[axis], 0) / greens.length).toFixed(7))
  return [mean(0), mean(1)]
}

/** The zone whose hour the sun keeps, such as `Etc/GMT-10` (ten hours ahead of UTC: the sign of those names runs the other way). */
const zoneByLongitude = (lonDeg: number): string => {
  const hours = Math.round(lonDeg / 15)
  return hours === 0 ? 'Etc/GMT' : `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}`
}

/** Puts a course together; whatever the club has not said is filled with what is usual, and told. */
export const assembledCourse = (ground: Ground, club: ClubMember): Result<CourseReading, CourseError> => {
  const middle = middleOf(ground.greens)
  const places = filledPlaces(ground.places, middle)
  const greensM2 = ground.greens.reduce((sum, { areaM2 }) => sum + areaM2, 0)
  const machines = filledMachines(club.machines)
  const people = filledPeople(club.people)
  const stores = filledStores(club.stores, { bay: places.bay, greensM2 })
  const tineSets = filledTineSets(club.tineSets)
  const fixtures = filledFixtures(club.fixtures)
  const settings = filledSettings(club.settings)
  const units = filledUnits(club.units)
  const name = club.name ?? 'Our course'
  const timeZone = club.timeZone ?? zoneByLongitude(middle[0])
  const course: Course = {
    version: COURSE_FILE_VERSION,
    id: club.id ?? slugOf(name, 'course'),
    name,
    timeZone,
    altitudeM: club.altitudeM ?? 0,
    now: club.now ?? null,
    greens: [...ground.greens],
    places: places.value,
    machines: machines.value,
    people: people.value,
    stores: stores.value,
    ...(tineSets === undefined ? {} : { tineSets }),
    fixtures: fixtures.value,
    settings: settings.value,
    units: units.value,
  }
  const assumed = [
    ...(club.assumed ?? []),
    ...(club.name === undefined ? [assumedFact('course.name')] : []),
    ...(club.timeZone === undefined ? [assumedFact('course.timeZone', timeZone)] : []),
    ...(club.altitudeM === undefined ? [assumedFact('course.altitudeM', 0)] : []),
    ...ground.assumed,
    ...[places, machines, people, stores, fixtures, settings, units].flatMap((part) => part.assumed),
  ]
  const error = crossCheck(course)
  return error === undefined ? ok({ course, assumed: [...new Set(assumed)] }) : fail(error)
}
