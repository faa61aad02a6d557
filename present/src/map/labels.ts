import { draw, type Drawing } from '../drawing.ts'
import { haloText } from '../halo-text.ts'
import { textWidthPx } from '../text-fit.ts'
import { paint } from '../tokens.ts'
import { RING_PX, STEP_RADIUS_PX } from './greens.ts'
import type { CourseMapInput, MapGreen, MapPlan } from './map-input.ts'
import type { SignGroup } from './signs.ts'

type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }

const NUMBER_PX = 14
const NAME_PX = 12

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top))

const outside = (box: Box, plan: MapPlan): number =>
  Math.max(0, -box.left, box.right - plan.widthPx, -box.top) * 100

/** The box of a green with the number of its step, which labels keep clear of. */
const greenBox = (green: MapGreen, input: CourseMapInput, plan: MapPlan): Box => {
  const points = green.outline.outer.map(plan.toPx)
  const [x, y] = plan.toPx(green.centre)
  const r =
    input.selected === green.id ? RING_PX : input.walk?.includes(green.id) === true ? STEP_RADIUS_PX : 3
  return {
    left: Math.min(x - r, ...points.map(([px]) => px)),
    right: Math.max(x + r, ...points.map(([px]) => px)),
    top: Math.min(y - r, ...points.map(([, py]) => py)),
    bottom: Math.max(y + r, ...points.map(([, py]) => py)),
  }
}

/** Eight places round a box for a label of this size, the best first: right, left, above, below, then the corners. */
const placesRound = (box: Box, width: number, height: number): readonly Box[] => {
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
  const at = (left: number, top: number): Box => ({ left, top, right: left + width, bottom: top + height })
  const gap = 3
  return [
    at(box.right + gap, y - height / 2),
    at(box.left - gap - width, y - height / 2),
    at(x - width / 2, box.top - gap - height),
    at(x - width / 2, box.bottom + gap),
    at(box.right, box.top - height),
    at(box.left - width, box.top - height),
    at(box.right, box.bottom),
    at(box.left - width, box.bottom),
  ]
}

/** The words of a label: the number as players know it, and the name where wanted or where there is no number. */
const wordsOf = (
  green: MapGreen,
  input: CourseMapInput,
): { readonly number: string; readonly name: string } => ({
  number: green.hole === null ? '' : String(green.hole),
  name: input.labels === 'names' || green.hole === null ? green.name : '',
})

const labelDrawing = (green: MapGreen, words: { number: string; name: string }, box: Box): Drawing => {
  const numberWidth =
    words.number === '' ? 0 : textWidthPx(words.number, NUMBER_PX) + (words.name === '' ? 0 : 4)
  const y = box.bottom - 4
  return draw('g', { 'data-part': 'label', 'data-id': green.id, 'pointer-events': 'none' }, [
    words.number === ''
      ? null
      : haloText(
          { x: box.left, y, 'font-size': NUMBER_PX, 'font-weight': 700, fill: paint('ink') },
          words.number,
        ),
    words.name === ''
      ? null
      : haloText({ x: box.left + numberWidth, y, 'font-size': NAME_PX, fill: paint('ink') }, words.name),
  ])
}

/** Labels of all greens, each where it covers least of what is there already. */
export const labelsDrawing = (
  input: CourseMapInput,
  plan: MapPlan,
  signs: readonly SignGroup[],
): readonly Drawing[] => {
  const greens = input.ground.greens
  const taken: Box[] = [
    ...greens.map((green) => greenBox(green, input, plan)),
    ...signs.map(({ x, y, widthPx }) => ({
      left: x - widthPx / 2,
      right: x + widthPx / 2,
      top: y - 9,
      bottom: y + 22,
    })),
  ]
  return greens.map((green, n) => {
    const words = wordsOf(green, input)
    const width =
      textWidthPx(words.number, NUMBER_PX) +
      textWidthPx(words.name, NAME_PX) +
      (words.name !== '' && words.number !== '' ? 4 : 0)
    const own = taken[n] ?? { left: 0, top: 0, right: 0, bottom: 0 }
    const cost = (box: Box): number =>
      outside(box, plan) + taken.reduce((sum, other) => sum + overlap(box, other), 0)
    const places = placesRound(own, width, NUMBER_PX + 2)
    const best = places.reduce((least, box) => (cost(box) < cost(least) ? box : least), places[0] ?? own)
    taken.push(best)
    return labelDrawing(green, words, best)
  })
}
