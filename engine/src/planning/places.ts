import type { Course, Machine, Place } from '../course/course.ts'
import { planeAt, type LocalPoint, type Plane } from '../ground/plane.ts'
import { distanceM, type Ring } from '../ground/polygon.ts'
import { trackNet } from '../ground/track-net.ts'
import { waysBetween, type TravelGround } from '../ground/travel.ts'
import { placeOf } from './green-shape.ts'

const SECONDS_PER_MINUTE = 60

/** Where things are: the shed first, then the sand bays, then the greens in the order given. */
export type Places = {
  readonly ids: readonly string[]
  /** How many of them are sand bays; they stand from 1 on. */
  readonly bays: number
  /** Way in metres between places, which may differ there and back: row `from * places + to`. */
  readonly wayM: Float64Array
  /** Ids of places with a way that is barred on all sides; such ways are taken straight all the same. */
  readonly cutOff: readonly string[]
}

const middleOf = (course: Course): readonly [number, number] => {
  const mean = (axis: 0 | 1): number =>
    course.greens.reduce((sum, green) => sum + green.at[axis], 0) / course.greens.length
  return [mean(0), mean(1)]
}

const localLine = (line: readonly (readonly [number, number])[], plane: Plane): readonly LocalPoint[] =>
  line.map((pair) => plane.toLocal(placeOf(pair)))

/** Outer rings of the places of some kinds; the point that closes a ring in the file is dropped. */
const outlinesOf = (course: Course, kinds: readonly Place['kind'][], plane: Plane): readonly Ring[] =>
  course.places.flatMap((place) => {
    const [outer] = kinds.includes(place.kind) ? (place.outline ?? []) : []
    return outer === undefined ? [] : [localLine(outer, plane).slice(0, -1)]
  })

/** How machines get about this course: its tracks, what bars them, and open ground in between. */
const travelGround = (course: Course, plane: Plane, doors: readonly LocalPoint[]): TravelGround => {
  const tracks = course.places.flatMap(({ kind, line, oneWay }) =>
    kind === 'track' && line !== undefined
      ? [{ line: localLine(line, plane), isOneWay: oneWay ?? false }]
      : [],
  )
  return {
    detourFactor: course.settings.detourFactor,
    ...trackNet(tracks, doors),
    noGo: outlinesOf(course, ['noGo'], plane),
    tracksOnly: outlinesOf(course, ['water', 'wood'], plane),
  }
}

/** Ways with the barred ones put straight, and which places those belong to. */
const withoutGaps = (waysM: Float64Array, points: readonly LocalPoint[], detourFactor: number) => {
  const count = points.length
  const freeTo = points.map((_, i) =>
    points.reduce((sum, __, j) => sum + (Number.isFinite(waysM[i * count + j]) ? 1 : 0), 0),
  )
  const wayM = waysM.map((way, k) => {
    const from = points[Math.floor(k / count)]
    const to = points[k % count]
    if (Number.isFinite(way) || from === undefined || to === undefined) return way
    return distanceM(from, to) * detourFactor
  })
  // The place that fewer ways lead from is the one that is shut in.
  const most = Math.max(...freeTo)
  return { wayM, cutOff: freeTo.flatMap((free, i) => (free < most ? [i] : [])) }
}

/**
 * The places that a plan works between. Ways follow the drawn tracks where those are shorter than open ground, keep off no-go surfaces, and
 * off water and wood but on a track. Without a shed in the course, machines live in the middle of its greens.
 */
export const placesOf = (course: Course, greens: readonly string[]): Places => {
  const shed = course.places.find((place) => place.kind === 'shed')
  const bays = course.places.filter((place) => place.kind === 'sandBay')
  const at = (id: string): readonly [number, number] =>
    course.greens.find((green) => green.id === id)?.at ?? [0, 0]
  const shedAt = shed?.at ?? middleOf(course)
  const plane = planeAt(placeOf(shedAt))
  const points = localLine([shedAt, ...bays.map((bay) => bay.at), ...greens.map(at)], plane)
  const ids = [shed?.id ?? 'shed', ...bays.map((bay) => bay.id), ...greens]
  const ground = travelGround(course, plane, points)
  const { wayM, cutOff } = withoutGaps(waysBetween(points, ground), points, ground.detourFactor)
  return { ids, bays: bays.length, wayM, cutOff: cutOff.flatMap((place) => ids[place] ?? []) }
}

/** Whole minutes for each way at a speed, rounded up; none for staying. */
export const travelMinutes = ({ wayM }: Places, speedMPerS: number): Int32Array =>
  Int32Array.from(wayM, (way) => Math.ceil(way / speedMPerS / SECONDS_PER_MINUTE))

/** Whole minutes of a machine for each way. From a sand bay to a green it goes loaded, which may be slower. */
export const machineTravelMinutes = (places: Places, machine: Machine): Int32Array => {
  const empty = travelMinutes(places, machine.travelMPerS)
  if (machine.loadedTravelMPerS === undefined) return empty
  const loaded = travelMinutes(places, machine.loadedTravelMPerS)
  const count = places.ids.length
  const isLoaded = (from: number, to: number): boolean => from >= 1 && from <= places.bays && to > places.bays
  return empty.map((minutes, k) =>
    isLoaded(Math.floor(k / count), k % count) ? (loaded[k] ?? minutes) : minutes,
  )
}
