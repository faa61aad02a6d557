import type { LocalPoint, Ring } from '@swardwright/engine'
import { coordinate, draw, part, sheet, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { paint } from './tokens.ts'

/** What the drawing of an outline that is being made shows. North is up, all in local metres. */
export type OutlineDrawingInput = {
  /** What it is of, for those who cannot see it. */
  readonly label: string
  /** The outline so far, its corners in order; islands after it. */
  readonly rings: readonly Ring[]
  /** Greens beside it, with what they are called. */
  readonly beside: readonly { readonly name: string; readonly ring: Ring }[]
  readonly bunkers: readonly Ring[]
  /** The line walked so far, open. */
  readonly walked?: readonly LocalPoint[]
  /** Where the outline is refused. */
  readonly faultAt?: LocalPoint | undefined
  /** Numbers each corner, up to as many as can be told apart. */
  readonly numbered?: boolean
  readonly widthPx: number
}

const MARGIN_PX = 26

/** More corners than this are not numbered: the numbers would cover the edge. */
const MOST_NUMBERS = 40

/** Metres shown each way where nothing is drawn yet. */
const EMPTY_M = 30

/** Ground shown around the outline so that one sees where it lies, m. */
const AROUND_M = 4

const extentOf = (points: readonly LocalPoint[]) => {
  const xs = points.map((point) => point.x)
  const ys = points.map((point) => point.y)
  return points.length === 0
    ? { west: -EMPTY_M, east: EMPTY_M, south: -EMPTY_M, north: EMPTY_M }
    : {
        west: Math.min(...xs) - AROUND_M,
        east: Math.max(...xs) + AROUND_M,
        south: Math.min(...ys) - AROUND_M,
        north: Math.max(...ys) + AROUND_M,
      }
}

/** The outline as it stands, with its corners, what lies around it, the walk, and where it is refused. */
export const outlineDrawing = (input: OutlineDrawingInput): Drawing => {
  const { rings, widthPx } = input
  const { west, east, south, north } = extentOf([...rings.flat(), ...(input.walked ?? [])])
  const spanM = Math.max(east - west, north - south, 1)
  const pxPerM = (widthPx - 2 * MARGIN_PX) / spanM
  const heightPx = (north - south) * pxPerM + 2 * MARGIN_PX
  const leftPx = (widthPx - (east - west) * pxPerM) / 2
  const at = ({ x, y }: LocalPoint) =>
    [leftPx + (x - west) * pxPerM, MARGIN_PX + (north - y) * pxPerM] as const
  const pathOf = (points: readonly LocalPoint[], isClosed: boolean): string =>
    points.length === 0
      ? ''
      : `M${points.map((point) => at(point).map(coordinate).join(' ')).join('L')}${isClosed ? 'Z' : ''}`
  const cornerMarks = rings.flatMap((ring, r) =>
    ring.map((corner, k) => {
      const [cx, cy] = at(corner)
      const dot = draw('circle', { cx, cy, r: 2.5, fill: paint('ink') })
      const hasNumber = input.numbered === true && r === 0 && ring.length <= MOST_NUMBERS
      const number = hasNumber
        ? haloText({ x: cx + 5, y: cy - 5, 'font-size': 11, fill: paint('ink') }, String(k + 1))
        : null
      return draw('g', {}, [dot, number])
    }),
  )
  const fault = input.faultAt === undefined ? undefined : at(input.faultAt)
  return sheet({ widthPx, heightPx, label: input.label }, [
    draw('rect', { width: widthPx, height: heightPx, fill: paint('paper') }),
    ...input.bunkers.map((ring) =>
      draw('path', { d: pathOf(ring, true), fill: paint('sand'), 'fill-opacity': 0.5 }),
    ),
    ...input.beside.map(({ name, ring }) =>
      part('beside', name, name, [
        draw('path', {
          d: pathOf(ring, true),
          fill: 'none',
          stroke: paint('quiet'),
          'stroke-dasharray': '4 3',
        }),
      ]),
    ),
    draw('path', {
      d: rings.map((ring) => pathOf(ring, true)).join(''),
      fill: paint('turf'),
      'fill-opacity': 0.25,
      'fill-rule': 'evenodd',
      stroke: paint(fault === undefined ? 'leaf' : 'rust'),
      'stroke-width': 2.5,
      'stroke-linejoin': 'round',
    }),
    draw('path', {
      d: pathOf(input.walked ?? [], false),
      fill: 'none',
      stroke: paint('rain'),
      'stroke-width': 2.5,
    }),
    ...cornerMarks,
    fault === undefined
      ? null
      : part('fault', '1', 'here it goes wrong', [
          draw('circle', {
            cx: fault[0],
            cy: fault[1],
            r: 12,
            fill: 'none',
            stroke: paint('rust'),
            'stroke-width': 3,
          }),
          haloText(
            { x: fault[0], y: fault[1] + 27, 'text-anchor': 'middle', 'font-size': 13, fill: paint('rust') },
            'here',
          ),
        ]),
    draw('path', {
      d: `M${widthPx - 14 - 10 * pxPerM} ${coordinate(heightPx - 10)}v4h${coordinate(10 * pxPerM)}v-4`,
      fill: 'none',
      stroke: paint('ink'),
    }),
    draw(
      'text',
      {
        x: widthPx - 14 - 5 * pxPerM,
        y: heightPx - 14,
        'text-anchor': 'middle',
        fill: paint('ink'),
        'font-size': 12,
      },
      ['10 m'],
    ),
    draw('path', { d: `M${widthPx - 14} 26v-16m-4 6l4 -6l4 6`, fill: 'none', stroke: paint('ink') }),
    draw('text', { x: widthPx - 30, y: 24, fill: paint('ink'), 'font-size': 12 }, ['N']),
  ])
}
