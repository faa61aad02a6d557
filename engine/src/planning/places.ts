import type { Course } from '../course/course.ts'
import { planeAt, type LocalPoint } from '../ground/plane.ts'
import { placeOf } from './green-shape.ts'

const SECONDS_PER_MINUTE = 60

/** Where things are: the shed first, then the sand bays, then the greens in the order given. */
export type Places = {
  readonly ids: readonly string[]
  /** Way in metres between places: row `from * places + to`. */
  readonly wayM: Float64Array
}

const middleOf = (course: Course): readonly [number, number] => {
  const mean = (axis: 0 | 1): number =>
    course.greens.reduce((sum, green) => sum + green.at[axis], 0) / course.greens.length
  return [mean(0), mean(1)]
}

/** The places that a plan works between. Without a shed in the course, machines live in the middle of its greens. */
export const placesOf = (course: Course, greens: readonly string[]): Places => {
  const shed = course.places.find((place) => place.kind === 'shed')
  const bays = course.places.filter((place) => place.kind === 'sandBay')
  const at = (id: string): readonly [number, number] =>
    course.greens.find((green) => green.id === id)?.at ?? [0, 0]
  const shedAt = shed?.at ?? middleOf(course)
  const plane = planeAt(placeOf(shedAt))
  const points: readonly LocalPoint[] = [shedAt, ...bays.map((bay) => bay.at), ...greens.map(at)].map(
    (pair) => plane.toLocal(placeOf(pair)),
  )
  const wayM = new Float64Array(points.length * points.length)
  points.forEach((from, i) => {
    points.forEach((to, j) => {
      wayM[i * points.length + j] = Math.hypot(to.x - from.x, to.y - from.y) * course.settings.detourFactor
    })
  })
  return { ids: [shed?.id ?? 'shed', ...bays.map((bay) => bay.id), ...greens], wayM }
}

/** Whole minutes for each way at a speed, rounded up; none for staying. */
export const travelMinutes = (wayM: Float64Array, speedMPerS: number): Int32Array =>
  Int32Array.from(wayM, (way) => Math.ceil(way / speedMPerS / SECONDS_PER_MINUTE))
