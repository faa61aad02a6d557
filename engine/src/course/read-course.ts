import { fail, ok, type Result } from '../result.ts'
import { assembledCourse, type CourseReading, type Ground } from './assemble-course.ts'
import { assumedFact, type CourseAssumption } from './assumed.ts'
import type { Green, Place } from './course.ts'
import type { CourseError } from './course-error.ts'
import { clubMember, COURSE_FILE_VERSION, MAX_FEATURES, type ClubMember } from './course-file.ts'
import { readFeature } from './read-feature.ts'
import { parsedJson } from './parse-json.ts'
import { described, readBySchema } from './schema-error.ts'

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
