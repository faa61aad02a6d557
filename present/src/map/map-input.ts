import type { LocalPoint, Place, Polygon, UnitsWanted } from '@swardwright/engine'
import type { WorkState } from '../operation-words.ts'

/** A green on the map, local metres. */
export type MapGreen = {
  readonly id: string
  readonly name: string
  readonly hole: number | null
  readonly outline: Polygon
  readonly centre: LocalPoint
  /** False where the outline stands in for one that nobody has drawn. */
  readonly isDrawn: boolean
}

/** Something else on the map: an area, a line, or a point, as it is known. */
export type MapPlace = {
  readonly id: string
  readonly name: string
  readonly kind: Place['kind']
  readonly at: LocalPoint
  readonly outline?: Polygon
  readonly line?: readonly LocalPoint[]
}

/** The ground of a course: what the map draws whatever the day. */
export type MapGround = { readonly greens: readonly MapGreen[]; readonly places: readonly MapPlace[] }

/** All that the map shows. */
export type CourseMapInput = {
  readonly ground: MapGround
  /** Work state of greens by id; a green without one is drawn as in play. */
  readonly states?: ReadonlyMap<string, WorkState>
  /** Ids of greens in the order they are worked; drawn as a numbered walk. */
  readonly walk?: readonly string[]
  readonly selected?: string | undefined
  /** Numbers alone, or names as well where there is room. */
  readonly labels: 'numbers' | 'names'
  readonly units: UnitsWanted
  readonly widthPx: number
  /** Short word for the ids inside the drawing; different for each drawing of a page. */
  readonly scope: string
}

/** Metres to pixels, north up. */
export type MapPlan = {
  readonly widthPx: number
  readonly heightPx: number
  readonly pxPerM: number
  readonly toPx: (point: LocalPoint) => readonly [x: number, y: number]
}

/** Paper left free round the course, px, and at the foot for scale and north. */
const EDGE_PX = 22
const FOOT_PX = 40
/** Tallest map for its width: a course much longer than wide is drawn smaller rather than higher. */
const TALLEST = 1.7

const pointsOf = (ground: MapGround): readonly LocalPoint[] => [
  ...ground.greens.flatMap((green) => green.outline.outer),
  ...ground.places.flatMap((place) => place.outline?.outer ?? place.line ?? [place.at]),
]

/** The layout: the whole ground in the width given. */
export const mapPlan = (ground: MapGround, widthPx: number): MapPlan => {
  const points = pointsOf(ground)
  const xs = points.map((point) => point.x)
  const ys = points.map((point) => point.y)
  const [west, east] = [Math.min(...xs), Math.max(...xs)]
  const [south, north] = [Math.min(...ys), Math.max(...ys)]
  const roomPx = widthPx - 2 * EDGE_PX
  const spanM = Math.max(1, east - west, (north - south) / TALLEST)
  const pxPerM = roomPx / spanM
  const leftPx = EDGE_PX + (roomPx - (east - west) * pxPerM) / 2
  return {
    widthPx,
    heightPx: (north - south) * pxPerM + 2 * EDGE_PX + FOOT_PX,
    pxPerM,
    toPx: ({ x, y }) => [leftPx + (x - west) * pxPerM, EDGE_PX + (north - y) * pxPerM],
  }
}
