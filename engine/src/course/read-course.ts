import { fail, ok, type Result } from '../result.ts'
import { assumedFact, type CourseAssumption } from './assumed.ts'
import type { Course, Green, Place } from './course.ts'
import type { CourseError } from './course-error.ts'
import { clubMember, COURSE_FILE_VERSION, MAX_FEATURES, type ClubMember } from './course-file.ts'
import { crossCheck } from './cross-check.ts'
import {
  filledFixtures,
  filledMachines,
  filledPeople,
  filledPlaces,
  filledSettings,
  filledStores,
  filledUnits,
} from './fill-club.ts'
import { readFeature } from './read-feature.ts'
import { parsedJson } from './parse-json.ts'
import { described, readBySchema } from './schema-error.ts'
import { slugOf } from './slug.ts'

/** A course that was read, and all that was taken for granted where the file is silent: coded facts, see `COURSE_ASSUMPTIONS`. */
export type CourseReading = { readonly course: Course; readonly assumed: readonly string[] }

type Collection = { readonly features: readonly unknown[]; readonly club: unknown }

const collectionOf = (value: unknown): Result<Collection, CourseError> => {
  const expected = "an object of type 'FeatureCollection' with a list of features"
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return fail({ type: 'notGeoJson', expected, received: described(value) })
  const [type, features] = [Reflect.get(value, 'type'), Reflect.get(value, 'features')]
  if (type !== 'FeatureCollection' || !Array.isArray(features))
    return fail({ type: 'notGeoJson', expected, received: `an object of type ${described(type)}` })
  if (features.length > MAX_FEATURES)
    return fail({
      type: 'tooMany',
      where: { feature: null, name: null, path: 'features' },
      what: 'features',
      max: MAX_FEATURES,
      received: features.length,
    })
  return ok({ features, club: Reflect.get(value, 'swardwright') })
}

const clubOf = (value: unknown): Result<ClubMember, CourseError> => {
  if (value === undefined) return ok({ version: COURSE_FILE_VERSION })
  const version: unknown = typeof value === 'object' && value !== null ? Reflect.get(value, 'version') : null
  if (typeof value === 'object' && value !== null && version !== COURSE_FILE_VERSION)
    return fail({ type: 'wrongVersion', allowed: COURSE_FILE_VERSION, received: described(version) })
  return readBySchema(clubMember, value, { feature: null, name: null, path: 'swardwright' })
}

type Ground = {
  readonly greens: readonly Green[]
  readonly places: readonly Place[]
  readonly assumed: readonly string[]
}

const GREEN_FIELDS: readonly [field: string, code: CourseAssumption][] = [
  ['name', 'green.name'],
  ['hole', 'green.hole'],
  ['outline', 'green.outline'],
  ['rootzone', 'green.rootzone'],
  ['drainage', 'green.drainage'],
  ['shade', 'green.shade'],
  ['weak', 'green.weak'],
  ['organicTests', 'green.organicTests'],
  ['servicesChecked', 'green.servicesChecked'],
]

/** One fact a field with the greens it was taken for, `all` when it is all. */
const greenFacts = (
  taken: readonly { readonly id: string; readonly fields: readonly string[] }[],
): readonly string[] =>
  GREEN_FIELDS.flatMap(([field, code]) => {
    const ids = taken.filter(({ fields }) => fields.includes(field)).map(({ id }) => id)
    if (ids.length === 0) return []
    return [assumedFact(code, ids.length === taken.length ? 'all' : ids.join(','))]
  })

const groundOf = (features: readonly unknown[]): Result<Ground, CourseError> => {
  const greens: Green[] = []
  const places: Place[] = []
  const taken: { id: string; fields: readonly string[] }[] = []
  const differing: string[] = []
  const numbers: Record<string, number> = {}
  for (const [index, feature] of features.entries()) {
    const read = readFeature(feature, index, numbers)
    if (!read.ok) return read
    const found = read.value
    if (found.type === 'green') {
      greens.push(found.green)
      taken.push({ id: found.green.id, fields: found.taken })
      differing.push(...found.facts)
    }
    if (found.type === 'place') places.push(found.place)
    const kind = found.type === 'place' ? found.place.kind : found.type
    numbers[kind] = (numbers[kind] ?? 0) + 1
  }
  if (greens.length === 0) return fail({ type: 'noGreens' })
  const skipped = numbers['skipped'] === undefined ? [] : [assumedFact('feature.skipped', numbers['skipped'])]
  return ok({ greens, places, assumed: [...skipped, ...differing, ...greenFacts(taken)] })
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

/**
 * Reads a course file: a GeoJSON FeatureCollection with the greens and other places, and all else of the club in the foreign member
 * `swardwright` (docs/course-file.md). Greens alone are enough; what is missing is filled with what is usual and listed in `assumed`.
 * Never throws for what a file holds; the first thing wrong comes back as a `CourseError`.
 */
export const readCourse = (text: string): Result<CourseReading, CourseError> => {
  const value = parsedJson(text)
  if (!value.ok) return value
  const collection = collectionOf(value.value)
  if (!collection.ok) return collection
  const club = clubOf(collection.value.club)
  if (!club.ok) return club
  const ground = groundOf(collection.value.features)
  return ground.ok ? assembledCourse(ground.value, club.value) : ground
}
