import { fail, type Result } from '../result.ts'
import { assembledCourse, type CourseReading } from './assemble-course.ts'
import { assumedFact } from './assumed.ts'
import { GREEN_AREA_M2, type Green } from './course.ts'
import type { CourseError } from './course-error.ts'
import { COURSE_FILE_VERSION } from './course-file.ts'
import { planeAtPosition, toPosition } from './outline.ts'
import { freeId, slugOf } from './slug.ts'
import { TYPICAL_GREEN } from './typical.ts'

/** What may be known of a rough course besides its greens. */
export type RoughClub = {
  readonly name?: string
  /** Where it lies, [longitude, latitude]; daylight and weather hang on it. */
  readonly at?: readonly [number, number]
  readonly timeZone?: string
}

/** A green of which only this is known. */
export type RoughGreen = { readonly name: string; readonly hole: number | null; readonly areaM2: number }

/** Where a course is taken to lie when nobody says: the middle of England. */
const TYPICAL_AT = [-2, 53] as const

/** Most greens of a rough course: six loops of nine. */
export const MAX_ROUGH_GREENS = 54

/** Nine greens on 300 degrees of a circle of this radius are 161 m apart, as greens of a course are; each loop opens to the shed. */
const LOOP_RADIUS_M = 280
const LOOP = 9
const LOOP_ARC = (300 / 180) * Math.PI

/** A made-up place for the n-th of `count` greens, m from the shed. */
const spotOf = (n: number, count: number): { readonly x: number; readonly y: number } => {
  const loops = Math.ceil(count / LOOP)
  const loop = Math.floor(n / LOOP)
  const towards = (2 * Math.PI * loop) / loops + Math.PI
  const around = towards + LOOP_ARC * (((n % LOOP) + 0.5) / LOOP - 0.5)
  return {
    x: LOOP_RADIUS_M * (Math.cos(towards) + Math.cos(around)),
    y: LOOP_RADIUS_M * (Math.sin(towards) + Math.sin(around)),
  }
}

/** A whole course of bare areas, with a typical crew, shed and sand (common practice, no source), marked `course.rough`. */
export const roughCourse = (
  greens: readonly RoughGreen[],
  club: RoughClub,
  facts: readonly string[],
): Result<CourseReading, CourseError> => {
  if (greens.length === 0) return fail({ type: 'noGreens' })
  const where = { feature: null, name: null, path: 'greens' }
  if (greens.length > MAX_ROUGH_GREENS)
    return fail({ type: 'tooMany', where, what: 'greens', max: MAX_ROUGH_GREENS, received: greens.length })
  const at = club.at ?? TYPICAL_AT
  const plane = planeAtPosition(at)
  const ids = new Set<string>()
  const whole = greens.map((green, n): Green => {
    const wanted =
      green.hole === null ? slugOf(green.name, 'green') : `g${String(green.hole).padStart(2, '0')}`
    const id = freeId(wanted, ids)
    ids.add(id)
    const position = toPosition(plane, spotOf(n, greens.length))
    return { ...TYPICAL_GREEN, organicTests: [], services: [], ...green, id, at: [...position] }
  })
  const assumed = [
    assumedFact('course.rough'),
    ...(club.at === undefined ? [assumedFact('course.at', at[1], at[0])] : []),
    ...facts,
    assumedFact('green.at', 'all'),
    ...(['outline', 'rootzone', 'drainage', 'shade', 'weak', 'organicTests', 'servicesChecked'] as const).map(
      (field) => assumedFact(`green.${field}`, 'all'),
    ),
  ]
  return assembledCourse(
    { greens: whole, places: [], assumed },
    {
      version: COURSE_FILE_VERSION,
      ...(club.name === undefined ? {} : { name: club.name }),
      ...(club.timeZone === undefined ? {} : { timeZone: club.timeZone }),
    },
  )
}

/**
 * A rough course of a number of greens (1 to 54) and their area in all, m2: all of one size, the first 18 numbered as holes.
 * Errors: a count or a mean area out of range.
 */
export const courseFromCount = (
  known: RoughClub & { readonly greens: number; readonly totalAreaM2: number },
): Result<CourseReading, CourseError> => {
  const { greens: count, totalAreaM2 } = known
  const where = { feature: null, name: null, path: 'greens' }
  if (!Number.isInteger(count) || count < 1 || count > MAX_ROUGH_GREENS)
    return fail({
      type: 'outOfRange',
      where,
      field: 'greens',
      unit: '1',
      min: 1,
      max: MAX_ROUGH_GREENS,
      received: count,
    })
  const { min, max } = GREEN_AREA_M2
  if (!(totalAreaM2 >= min * count && totalAreaM2 <= max * count))
    return fail({
      type: 'outOfRange',
      where: { ...where, path: 'totalAreaM2' },
      field: 'totalAreaM2',
      unit: 'm2',
      min: min * count,
      max: max * count,
      received: totalAreaM2,
    })
  const greens = Array.from({ length: count }, (_, n): RoughGreen => {
    const hole = n < 18 ? n + 1 : null
    const name = hole === null ? `Practice ${n - 17}` : `Green ${hole}`
    return { name, hole, areaM2: totalAreaM2 / count }
  })
  return roughCourse(greens, known, [assumedFact('green.areaM2', 'all'), assumedFact('green.name', 'all')])
}
