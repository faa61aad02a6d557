import { fail, ok, type Result } from '../result.ts'
import type { CourseError, CourseWhere } from './course-error.ts'
import { MAX_POINTS } from './course-file.ts'
import { described } from './schema-error.ts'

/** A place as a file has it: [longitude, latitude], degrees, in range. A height is dropped. */
export type Position = readonly [number, number]

/** A feature's geometry, its coordinates checked; rings as they stand in the file. */
export type Geometry =
  | { readonly type: 'Point'; readonly at: Position }
  | { readonly type: 'LineString'; readonly line: readonly Position[] }
  | { readonly type: 'Polygon'; readonly rings: readonly (readonly Position[])[] }

/** Beyond this latitude the local plane gives up. */
const MAX_LATITUDE_DEG = 85

const below = (where: CourseWhere, step: string | number): CourseWhere => ({
  ...where,
  path: typeof step === 'number' ? `${where.path}[${step}]` : `${where.path}.${step}`,
})

const wrongType = (where: CourseWhere, expected: string, value: unknown) =>
  fail({ type: 'wrongType' as const, where, field: where.path, expected, received: described(value) })

const positionOf = (value: unknown, where: CourseWhere): Result<Position, CourseError> => {
  const [lon, lat]: readonly unknown[] = Array.isArray(value) ? value : []
  if (typeof lon !== 'number' || typeof lat !== 'number' || !Number.isFinite(lon) || !Number.isFinite(lat))
    return wrongType(where, 'a position [longitude, latitude] in degrees', value)
  if (Math.abs(lon) <= 180 && Math.abs(lat) <= MAX_LATITUDE_DEG) return ok([lon, lat])
  const swapped = Math.abs(lat) <= 180 && Math.abs(lon) <= MAX_LATITUDE_DEG
  return fail({ type: 'coordinateOutOfRange', where, lon, lat, swapped })
}

/** Reads each entry of a list; the first error ends it. */
const each = <T>(
  value: unknown,
  where: CourseWhere,
  one: (entry: unknown, at: CourseWhere) => Result<T, CourseError>,
): Result<readonly T[], CourseError> => {
  if (!Array.isArray(value)) return wrongType(where, 'a list', value)
  if (value.length > MAX_POINTS)
    return fail({ type: 'tooMany', where, what: 'points', max: MAX_POINTS, received: value.length })
  const read: T[] = []
  for (const [index, entry] of value.entries()) {
    const result = one(entry, below(where, index))
    if (!result.ok) return result
    read.push(result.value)
  }
  return ok(read)
}

const lineOf = (least: number) => (value: unknown, where: CourseWhere) => {
  const positions = each(value, where, positionOf)
  if (!positions.ok || positions.value.length >= least) return positions
  return wrongType(where, `a list of at least ${least} positions`, value)
}

/** A ring of a file: four positions at least, since the last repeats the first. */
const ringOf = lineOf(4)

const ringsOf = (value: unknown, where: CourseWhere) => {
  const rings = each(value, where, ringOf)
  return rings.ok && rings.value.length === 0 ? wrongType(where, 'a list of rings', value) : rings
}

const fieldOf = (value: unknown, field: string): unknown =>
  typeof value === 'object' && value !== null ? Reflect.get(value, field) : undefined

/**
 * Reads the geometry of a feature whose kind allows `types`. Errors: another type, a list that is none, a position out of range
 * (told apart when the two are swapped), too many points.
 */
export const readGeometry = (
  value: unknown,
  where: CourseWhere,
  types: readonly Geometry['type'][],
): Result<Geometry, CourseError> => {
  const type = types.find((known) => known === fieldOf(value, 'type'))
  if (type === undefined)
    return fail({
      type: 'notAllowed',
      where: below(where, 'type'),
      field: 'geometry.type',
      allowed: types,
      received: described(fieldOf(value, 'type')),
    })
  const coordinates = fieldOf(value, 'coordinates')
  const at = below(where, 'coordinates')
  if (type === 'Point') {
    const read = positionOf(coordinates, at)
    return read.ok ? ok({ type, at: read.value }) : read
  }
  if (type === 'LineString') {
    const read = lineOf(2)(coordinates, at)
    return read.ok ? ok({ type, line: read.value }) : read
  }
  const read = ringsOf(coordinates, at)
  return read.ok ? ok({ type, rings: read.value }) : read
}

/** Some position of a place: its own, its line's middle one, its ring's first. */
export const positionOnPlace = (shape: Geometry): Position => {
  if (shape.type === 'Point') return shape.at
  const line = shape.type === 'LineString' ? shape.line : (shape.rings[0] ?? [])
  return line[shape.type === 'LineString' ? Math.floor(line.length / 2) : 0] ?? [0, 0]
}
