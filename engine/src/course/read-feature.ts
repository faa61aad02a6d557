import { fail, ok, type Result } from '../result.ts'
import { assumedFact } from './assumed.ts'
import { GREEN_AREA_M2, type Green, type Place } from './course.ts'
import type { CourseError, CourseWhere } from './course-error.ts'
import { FEATURE_KINDS, greenProperties, placeProperties, type GreenProperties } from './course-file.ts'
import { outlineAreaOutOfRange, readOutline, ringGapM, type OutlineFacts } from './outline.ts'
import { positionOnPlace, readGeometry, type Geometry, type Position } from './read-geometry.ts'
import { described, readBySchema } from './schema-error.ts'
import { TYPICAL_GREEN } from './typical.ts'

/** What one feature gives: a green with the fields that were taken for granted, a place, or nothing. */
export type FeatureRead =
  | {
      readonly type: 'green'
      readonly green: Green
      readonly taken: readonly string[]
      readonly facts: readonly string[]
    }
  | { readonly type: 'place'; readonly place: Place }
  | { readonly type: 'skipped' }

/** A stated area may differ this much from the outline's before it is told, and before it is an error, %. */
const TOLD_FROM_PERCENT = 2
const ERROR_FROM_PERCENT = 25

const fieldOf = (value: unknown, field: string): unknown =>
  typeof value === 'object' && value !== null ? Reflect.get(value, field) : undefined

const textOf = (value: unknown): string | null =>
  typeof value === 'string' && value !== '' ? value.slice(0, 60) : null

/** The id that a feature has without saying `properties.id`: GeoJSON's own, else kind and number. */
const idOf = (feature: unknown, fallback: string): string => {
  const own = fieldOf(feature, 'id')
  const text = typeof own === 'number' ? String(own) : own
  return typeof text === 'string' && /^[\p{L}\p{N}._-]{1,64}$/u.test(text) ? text : fallback
}

const greenAreaM2 = (
  stated: number | undefined,
  outline: OutlineFacts | null,
  where: CourseWhere,
): Result<{ readonly areaM2: number; readonly differs: boolean }, CourseError> => {
  if (outline === null)
    return stated === undefined
      ? fail({
          type: 'missing',
          where,
          field: 'areaM2',
          expected: 'the area in m2, since the green has no outline',
        })
      : ok({ areaM2: stated, differs: false })
  const received = outline.areaM2
  if (received < GREEN_AREA_M2.min || received > GREEN_AREA_M2.max)
    return fail(outlineAreaOutOfRange(where, received))
  if (stated === undefined) return ok({ areaM2: received, differs: false })
  const percent = (100 * Math.abs(stated - received)) / received
  return percent > ERROR_FROM_PERCENT
    ? fail({
        type: 'areaMismatch',
        where,
        statedM2: stated,
        outlineM2: received,
        maxPercent: ERROR_FROM_PERCENT,
      })
    : ok({ areaM2: stated, differs: percent > TOLD_FROM_PERCENT })
}

/** Fields that a green may leave out; each that is taken for granted is named. */
const OPTIONAL_GREEN = ['drainage', 'shade', 'weak', 'organicTests', 'servicesChecked'] as const

const takenOf = (given: GreenProperties, hasOutline: boolean): readonly string[] => [
  ...(given.name === undefined ? ['name'] : []),
  ...(given.hole === undefined ? ['hole'] : []),
  ...(hasOutline ? [] : ['outline']),
  ...(given.rootzone?.kind === undefined || given.rootzone.goodDepthMm === undefined ? ['rootzone'] : []),
  ...OPTIONAL_GREEN.filter((field) => given[field] === undefined),
]

type Raw = { readonly feature: unknown; readonly where: CourseWhere; readonly number: number }

const readGreen = ({ feature, where, number }: Raw): Result<FeatureRead, CourseError> => {
  const read = readBySchema(greenProperties, fieldOf(feature, 'properties'), {
    ...where,
    path: `${where.path}.properties`,
  })
  if (!read.ok) return read
  const at = { ...where, path: `${where.path}.geometry` }
  const geometry = readGeometry(fieldOf(feature, 'geometry'), at, ['Polygon', 'Point'])
  if (!geometry.ok) return geometry
  const shape = geometry.value
  const outline = shape.type === 'Polygon' ? readOutline(shape.rings, at) : null
  if (outline !== null && !outline.ok) return outline
  const area = greenAreaM2(read.value.areaM2, outline === null ? null : outline.value, where)
  if (!area.ok) return area
  const position = read.value.at ?? (outline === null ? positionOnPlace(shape) : outline.value.at)
  return ok(
    greenFrom(read.value, {
      feature,
      number,
      shape,
      at: position,
      ...area.value,
      outline: outline?.value ?? null,
    }),
  )
}

type GreenGround = {
  readonly feature: unknown
  readonly number: number
  readonly shape: Geometry
  readonly at: Position
  readonly areaM2: number
  readonly differs: boolean
  readonly outline: OutlineFacts | null
}

const greenFrom = (given: GreenProperties, ground: GreenGround): FeatureRead => {
  const { number, shape, areaM2, outline } = ground
  const hole = given.hole ?? null
  const id =
    given.id ?? idOf(ground.feature, hole === null ? `green-${number}` : `g${String(hole).padStart(2, '0')}`)
  const green: Green = {
    ...TYPICAL_GREEN,
    organicTests: given.organicTests ?? [],
    services: given.services ?? [],
    id,
    name: given.name ?? `Green ${hole ?? number}`,
    hole,
    areaM2,
    at: [...ground.at],
    rootzone: {
      kind: given.rootzone?.kind ?? TYPICAL_GREEN.rootzone.kind,
      goodDepthMm: given.rootzone?.goodDepthMm ?? TYPICAL_GREEN.rootzone.goodDepthMm,
    },
    drainage: given.drainage ?? TYPICAL_GREEN.drainage,
    shade: given.shade ?? TYPICAL_GREEN.shade,
    weak: given.weak ?? TYPICAL_GREEN.weak,
    servicesChecked: given.servicesChecked ?? TYPICAL_GREEN.servicesChecked,
    ...(given.playDeg === undefined ? {} : { playDeg: given.playDeg }),
    ...(given.slope === undefined ? {} : { slope: given.slope }),
    ...(shape.type === 'Polygon' ? { outline: shape.rings.map(copied) } : {}),
  }
  const facts =
    ground.differs && outline !== null ? [assumedFact('green.areaDiffers', id, areaM2, outline.areaM2)] : []
  return { type: 'green', green, taken: takenOf(given, outline !== null), facts }
}

const copied = (positions: readonly Position[]): [number, number][] =>
  positions.map(([lon, lat]) => [lon, lat])

const readPlace = ({ feature, where, number }: Raw): Result<FeatureRead, CourseError> => {
  const read = readBySchema(placeProperties, fieldOf(feature, 'properties'), {
    ...where,
    path: `${where.path}.properties`,
  })
  if (!read.ok) return read
  const at = { ...where, path: `${where.path}.geometry` }
  const geometry = readGeometry(fieldOf(feature, 'geometry'), at, ['Point', 'LineString', 'Polygon'])
  if (!geometry.ok) return geometry
  const shape = geometry.value
  const gapM = shape.type === 'Polygon' ? ringGapM(shape.rings) : null
  if (gapM !== null) return fail({ type: 'unclosedRing', where: at, gapM })
  const { kind, name } = read.value
  const id = read.value.id ?? idOf(feature, `${kind}-${number}`)
  const position = read.value.at ?? positionOnPlace(shape)
  const place: Place = {
    id,
    name: name ?? id,
    kind,
    at: [...position],
    ...(read.value.oneWay === undefined ? {} : { oneWay: read.value.oneWay }),
    ...(shape.type === 'LineString' ? { line: copied(shape.line) } : {}),
    ...(shape.type === 'Polygon' ? { outline: shape.rings.map(copied) } : {}),
  }
  return ok({ type: 'place', place })
}

/**
 * Reads one feature; `index` is its place in the file, `numbers` how many of a kind came before, for those that have no id.
 * A feature without a kind is skipped; a kind that is not of the list is an error, since it is most often a slip.
 */
export const readFeature = (
  feature: unknown,
  index: number,
  numbers: Readonly<Record<string, number>>,
): Result<FeatureRead, CourseError> => {
  const properties = fieldOf(feature, 'properties')
  const name = textOf(fieldOf(properties, 'name')) ?? textOf(fieldOf(properties, 'id'))
  const where: CourseWhere = { feature: index, name, path: `features[${index}]` }
  if (fieldOf(feature, 'type') !== 'Feature')
    return fail({
      type: 'wrongType',
      where,
      field: 'type',
      expected: "an object of type 'Feature'",
      received: described(feature),
    })
  const kind = fieldOf(properties, 'kind')
  if (kind === undefined || kind === null) return ok({ type: 'skipped' })
  if (typeof kind !== 'string' || !FEATURE_KINDS.some((known) => known === kind))
    return fail({
      type: 'notAllowed',
      where: { ...where, path: `${where.path}.properties.kind` },
      field: 'kind',
      allowed: FEATURE_KINDS,
      received: described(kind),
    })
  const number = (numbers[kind] ?? 0) + 1
  return kind === 'green' ? readGreen({ feature, where, number }) : readPlace({ feature, where, number })
}
