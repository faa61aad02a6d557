import { isOnGreen, type LocalPoint, type Polygon } from '@swardwright/engine'
import { coordinate, draw, part, type Drawing, type DrawingChild } from '../drawing.ts'
import { patternFill } from '../patterns.ts'
import { scattered, scatteredOnLine } from '../scatter.ts'
import { paint } from '../tokens.ts'
import type { CourseMapInput, MapPlace, MapPlan } from './map-input.ts'

/** Path data of a polygon, islands left open by the even-odd rule. */
export const polygonPath = (polygon: Polygon, plan: MapPlan): string =>
  [polygon.outer, ...polygon.holes]
    .map((ring) => {
      const at = ring.map((point) => plan.toPx(point).map(coordinate).join(' '))
      return `M${at.join('L')}Z`
    })
    .join('')

const linePath = (line: readonly LocalPoint[], plan: MapPlan): string =>
  `M${line.map((point) => plan.toPx(point).map(coordinate).join(' ')).join('L')}`

/** About one crown on so many square pixels of wood. */
const PX2_PER_TREE = 150

/** Crowns of trees, as a hand draws them on a map: three bumps, spread over the wood. */
const treesOver = (polygon: Polygon, plan: MapPlan): Drawing => {
  const xs = polygon.outer.map((point) => point.x)
  const ys = polygon.outer.map((point) => point.y)
  const [west, south] = [Math.min(...xs), Math.min(...ys)]
  const [wideM, highM] = [Math.max(...xs) - west, Math.max(...ys) - south]
  const count = Math.ceil((wideM * highM * plan.pxPerM ** 2) / PX2_PER_TREE)
  const crowns = Array.from({ length: count }, (_, n) => {
    const { u, v } = scattered(n)
    return { point: { x: west + u * wideM, y: south + v * highM }, size: 0.8 + 0.5 * scatteredOnLine(n) }
  })
    .filter(({ point }) => isOnGreen(point, polygon))
    .sort((a, b) => b.point.y - a.point.y)
    .map(({ point, size }) => {
      const [x, y] = plan.toPx(point)
      const r = 3 * size
      return `M${coordinate(x - r)} ${coordinate(y)}a${coordinate(r * 0.7)} ${coordinate(r * 0.9)} 0 0 1 ${coordinate(r)} ${coordinate(-r * 0.9)}a${coordinate(r * 0.7)} ${coordinate(r * 0.9)} 0 0 1 ${coordinate(r)} ${coordinate(r * 0.9)}`
    })
  return draw('path', {
    d: crowns.join(''),
    fill: paint('trees'),
    stroke: paint('leaf'),
    'stroke-width': 0.8,
    'stroke-linecap': 'round',
  })
}

const area = (
  place: MapPlace,
  plan: MapPlan,
  attributes: Readonly<Record<string, string | number>>,
): DrawingChild =>
  place.outline === undefined
    ? null
    : draw('path', {
        d: polygonPath(place.outline, plan),
        'fill-rule': 'evenodd',
        'stroke-linejoin': 'round',
        ...attributes,
      })

/** What each kind of place looks like. */
const placeMarks = (place: MapPlace, input: CourseMapInput, plan: MapPlan): readonly DrawingChild[] => {
  switch (place.kind) {
    case 'boundary':
      return [
        area(place, plan, {
          fill: 'none',
          stroke: paint('quiet'),
          'stroke-width': 1,
          'stroke-dasharray': '9 3 1.5 3',
        }),
      ]
    case 'wood':
      return place.outline === undefined ? [] : [treesOver(place.outline, plan)]
    case 'water':
      return [
        area(place, plan, { fill: paint('pool'), stroke: paint('rain'), 'stroke-width': 1.2 }),
        area(place, plan, { fill: patternFill(input.scope, 'water'), 'fill-opacity': 0.6 }),
      ]
    case 'noGo':
      return [
        area(place, plan, {
          fill: patternFill(input.scope, 'shut'),
          'fill-opacity': 0.5,
          stroke: paint('rust'),
          'stroke-width': 0.8,
          'stroke-dasharray': '4 3',
        }),
      ]
    case 'tee':
      return [
        area(place, plan, {
          fill: paint('turf'),
          'fill-opacity': 0.45,
          stroke: paint('leaf'),
          'stroke-width': 0.5,
        }),
      ]
    case 'bunker':
      return [area(place, plan, { fill: paint('sand'), stroke: paint('thatch'), 'stroke-width': 0.6 })]
    case 'track':
      return place.line === undefined
        ? []
        : [
            draw('path', {
              d: linePath(place.line, plan),
              fill: 'none',
              stroke: paint('rule'),
              'stroke-width': 2.4,
              'stroke-linejoin': 'round',
              'stroke-linecap': 'round',
            }),
          ]
    default:
      return []
  }
}

/** From the ground up: what lies under what. Shed and bays are signs, drawn apart. */
const LAYERS: readonly MapPlace['kind'][] = ['boundary', 'water', 'noGo', 'track', 'wood', 'tee', 'bunker']

/** All of the ground but the greens and the signs. */
export const landDrawing = (input: CourseMapInput, plan: MapPlan): readonly Drawing[] =>
  LAYERS.flatMap((kind) =>
    input.ground.places
      .filter((place) => place.kind === kind)
      .map((place) => part(place.kind, place.id, place.name, placeMarks(place, input, plan))),
  )
