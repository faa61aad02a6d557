import {
  equivalentEllipse,
  lonLat,
  outlineFrom,
  planeAt,
  polygonAreaM2,
  readMapFile,
  TYPICAL_MACHINES,
  type Course,
  type LonLat,
  type MapFeature,
  type Plane,
  type Polygon,
} from '@swardwright/engine'
import { mapFileErrorSentence, outlineErrorSentence } from '@swardwright/present'
import { BadInput, type Io } from './command.ts'
import { openCourse } from './files.ts'

/** The machine whose pace stands in where none is given. */
export type PaceSource = {
  readonly title: string
  readonly widthM: number
  readonly speedMPerS: number
  readonly turnS: number
}

/** One green to lay runs over. */
export type Ground = {
  readonly name: string
  readonly polygon: Polygon
  readonly plane: Plane
  readonly areaM2: number
  readonly isApproximate: boolean
  readonly machine: PaceSource
}

/** The machine nearest in width; the earlier one where two are alike. */
const nearestInWidth = (machines: readonly PaceSource[], widthM: number): PaceSource => {
  const known = machines.length > 0 ? machines : typicalMachines
  return known.reduce((best, machine) =>
    Math.abs(machine.widthM - widthM) < Math.abs(best.widthM - widthM) ? machine : best,
  )
}

const typicalMachines: readonly PaceSource[] = Object.values(TYPICAL_MACHINES).map((machine) => ({
  ...machine,
  title: `a usual ${machine.title.toLowerCase()}`,
}))

type Found = Pick<Ground, 'name' | 'polygon' | 'plane' | 'areaM2' | 'isApproximate'>

const fromRings = (name: string, where: string, rings: readonly (readonly LonLat[])[]): Found => {
  const outline = outlineFrom(rings)
  if (!outline.ok) throw new BadInput(`${where}: ${outlineErrorSentence(outline.error)}`)
  return { name, isApproximate: false, ...outline.value }
}

const placesOf = (ring: readonly (readonly [number, number])[]): readonly LonLat[] =>
  ring.flatMap(([lonDeg, latDeg]) => {
    const place = lonLat(lonDeg, latDeg)
    return place.ok ? [place.value] : []
  })

const nameOfGreen = (wanted: string) => (green: Course['greens'][number]) =>
  green.id === wanted ||
  green.name.toLowerCase() === wanted.toLowerCase() ||
  String(green.hole ?? '') === wanted

/** A green of a course by its id, name or hole. */
export const groundFromCourseFile = async (
  io: Io,
  path: string,
  wanted: string,
  widthM: number,
): Promise<Ground> => {
  const { course } = await openCourse(io, path)
  const green = course.greens.find(nameOfGreen(wanted))
  if (green === undefined)
    throw new BadInput(
      `${path} has no green '${wanted}'; it has ${course.greens.map(({ id }) => id).join(', ')}`,
    )
  const machine = nearestInWidth(
    course.machines.map((own) => ({ ...own, title: own.name })),
    widthM,
  )
  if (green.outline !== undefined)
    return { ...fromRings(green.name, `${path}, ${green.name}`, green.outline.map(placesOf)), machine }
  const [at] = placesOf([green.at])
  if (at === undefined) throw new Error('a green of a course that was read has a place')
  const polygon = equivalentEllipse({ areaM2: green.areaM2 })
  const { name } = green
  return { name, polygon, plane: planeAt(at), areaM2: polygonAreaM2(polygon), isApproximate: true, machine }
}

/** The one green of a file, or its one surface. */
const onlySurface = (path: string, features: readonly MapFeature[]): MapFeature => {
  const surfaces = features.filter((feature) => feature.shape === 'surface')
  const greens = surfaces.filter((feature) => feature.kind === 'green')
  const likely = greens.length > 0 ? greens : surfaces
  const [only] = likely
  if (only === undefined) throw new BadInput(`${path} holds no polygon`)
  if (likely.length > 1)
    throw new BadInput(`${path} holds ${likely.length} polygons; give a file with one green`)
  return only
}

/** The green drawn in a map file (GeoJSON; KML and OpenStreetMap extracts read as well). */
export const groundFromOutline = async (io: Io, path: string, widthM: number): Promise<Ground> => {
  const read = readMapFile(await io.readFile(path))
  if (!read.ok) throw new BadInput(`${path}: ${mapFileErrorSentence(read.error)}`)
  const feature = onlySurface(path, read.value.features)
  return { ...fromRings(feature.name ?? 'Green', path, feature.rings), machine: nearestInWidth([], widthM) }
}
