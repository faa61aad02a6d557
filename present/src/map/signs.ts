import { coordinate, draw, part, type Drawing } from '../drawing.ts'
import { haloText } from '../halo-text.ts'
import { paint } from '../tokens.ts'
import type { MapGround, MapPlace, MapPlan } from './map-input.ts'

const SIGN_KINDS = ['shed', 'sandBay', 'arisingsBay'] as const
type SignKind = (typeof SIGN_KINDS)[number]

/** Half the width of a sign, and the room it takes beside its neighbours, px. */
const HALF_PX = 8
const STEP_PX = 20

const WORDS: Readonly<Record<SignKind, string>> = { shed: 'shed', sandBay: 'sand', arisingsBay: 'arisings' }

/** Signs that stand together: a yard, or one alone. */
export type SignGroup = {
  readonly places: readonly MapPlace[]
  /** Middle of the group, px. */
  readonly x: number
  readonly y: number
  readonly words: string
  readonly widthPx: number
}

const isSign = (place: MapPlace): place is MapPlace & { readonly kind: SignKind } =>
  SIGN_KINDS.some((kind) => kind === place.kind)

/** A green under a sign would be hidden; the sign gives way to the side, by no more than the green's own width. */
const clearOfGreens = (
  group: { readonly x: number; readonly y: number; readonly widthPx: number },
  ground: MapGround,
  plan: MapPlan,
): number =>
  ground.greens.reduce((x, green) => {
    const points = green.outline.outer.map(plan.toPx)
    const xs = points.map(([px]) => px)
    const [left, right] = [Math.min(...xs), Math.max(...xs)]
    const high = points.some(([, py]) => Math.abs(py - group.y) < HALF_PX + 2)
    const half = group.widthPx / 2 + 3
    if (!high || right < x - half || left > x + half) return x
    return x < (left + right) / 2 ? left - half : right + half
  }, group.x)

/** Shed and bays, gathered where they would stand on each other; on a small map a whole yard is one group. */
export const signGroups = (ground: MapGround, plan: MapPlan): readonly SignGroup[] => {
  const groups: { places: (MapPlace & { readonly kind: SignKind })[]; x: number; y: number }[] = []
  for (const place of ground.places.filter(isSign)) {
    const [x, y] = plan.toPx(place.at)
    const near = groups.find((group) => Math.hypot(group.x - x, group.y - y) < 2 * STEP_PX)
    if (near === undefined) groups.push({ places: [place], x, y })
    else near.places.push(place)
  }
  return groups.map(({ places, x: wantedX, y }) => {
    const [first] = places
    const widthPx = (places.length - 1) * STEP_PX + 2 * HALF_PX
    const x = clearOfGreens({ x: wantedX, y, widthPx }, ground, plan)
    return {
      places,
      x,
      y,
      words: places.length > 1 ? 'yard' : first === undefined ? '' : WORDS[first.kind],
      widthPx,
    }
  })
}

const house = (x: number, y: number): Drawing =>
  draw('path', {
    d: `M${coordinate(x - 7)} ${coordinate(y + 6)}v-8l7 -5.5l7 5.5v8z`,
    fill: paint('paper'),
    stroke: paint('ink'),
    'stroke-width': 1.3,
    'stroke-linejoin': 'round',
  })

const heap = (x: number, y: number, fill: string): Drawing =>
  draw('path', {
    d: `M${coordinate(x - HALF_PX)} ${coordinate(y + 6)}q4 -1 5.5 -6t5 0t5.5 6z`,
    fill,
    stroke: paint('ink'),
    'stroke-width': 1.2,
    'stroke-linejoin': 'round',
  })

const signMark = (place: MapPlace, x: number, y: number): Drawing =>
  place.kind === 'shed' ? house(x, y) : heap(x, y, paint(place.kind === 'sandBay' ? 'sand' : 'thatch'))

/** A house for the shed, a heap for each bay, side by side with one word under them. */
export const signsDrawing = (groups: readonly SignGroup[]): readonly Drawing[] =>
  groups.map(({ places, x, y, words }) =>
    draw('g', {}, [
      ...places.map((place, n) =>
        part(place.kind, place.id, place.name, [
          signMark(place, x + (n - (places.length - 1) / 2) * STEP_PX, y),
        ]),
      ),
      haloText({ x, y: y + 19, 'font-size': 12, 'text-anchor': 'middle', fill: paint('quiet') }, words),
    ]),
  )
