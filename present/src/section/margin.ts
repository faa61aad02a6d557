import { coordinate, draw, type Drawing } from '../drawing.ts'
import { decimal } from '../numbers.ts'
import { paint } from '../tokens.ts'
import { quantityWords } from '../units.ts'
import { unmeasured } from './soil.ts'
import { cutsAcross, type SectionInput, type SectionPlan } from './section-input.ts'

/** Width of the margin with the figures of the layers, px. */
export const MARGIN_PX = 74
/** Least distance between two notes, px. */
const NOTE_PX = 30

type Note = {
  readonly atMm: number
  readonly figure: string
  readonly small: string
}

const notesOf = (input: SectionInput, plan: SectionPlan): readonly Note[] =>
  [
    ...(input.thatchMm === undefined || input.thatchMm <= 0
      ? []
      : [
          {
            atMm: input.thatchMm / 2,
            figure: quantityWords('depth', input.thatchMm, input.units),
            small: 'thatch',
          },
        ]),
    ...input.layers
      .filter((layer) => layer.fromMm < plan.depthMm)
      .map((layer) => ({
        atMm: (layer.fromMm + Math.min(layer.toMm, plan.depthMm)) / 2,
        figure: `${decimal(layer.organicPercent, 1)} %`,
        small: 'organic',
      })),
    ...unmeasured(input.layers, plan.depthMm).map((gap) => ({
      atMm: (gap.fromMm + gap.toMm) / 2,
      figure: '\u2013',
      small: 'not tested',
    })),
  ].sort((a, b) => a.atMm - b.atMm)

/** Figures of the layers beside them. Notes too near the one above move down. */
export const marginDrawing = (input: SectionInput, plan: SectionPlan, leftPx: number): Drawing => {
  let lowestPx = plan.groundPx - NOTE_PX
  return draw(
    'g',
    { 'data-part': 'margin' },
    notesOf(input, plan).map((note) => {
      const y = Math.max(plan.yPx(note.atMm), lowestPx + NOTE_PX)
      lowestPx = y
      return draw('g', {}, [
        draw('path', {
          d: `M${coordinate(leftPx - 10)} ${coordinate(plan.yPx(note.atMm))}L${coordinate(leftPx - 2)} ${coordinate(y)}`,
          stroke: paint('quiet'),
          'stroke-width': 0.9,
          fill: 'none',
        }),
        draw('text', { x: leftPx + 4, y: y + 2, 'font-size': 15, 'font-weight': 600, fill: paint('ink') }, [
          note.figure,
        ]),
        draw('text', { x: leftPx + 4, y: y + 15, 'font-size': 11, fill: paint('quiet') }, [note.small]),
      ])
    }),
  )
}

/** The distance between two cuts, above the leaf, as a draughtsman sets it. Null where fewer than two fit the cut. */
const measure = (
  plan: SectionPlan,
  pair: readonly [number | undefined, number | undefined],
  words: string,
  yPx: number,
): Drawing | null => {
  const [fromMm, toMm] = pair
  if (fromMm === undefined || toMm === undefined) return null
  const [from, to] = [plan.xPx(fromMm), plan.xPx(toMm)]
  const wide = to - from > words.length * 6.4 + 10
  return draw('g', { 'data-part': 'measure' }, [
    draw('path', {
      d: `M${coordinate(from)} ${yPx - 4}v8M${coordinate(to)} ${yPx - 4}v8M${coordinate(from)} ${yPx}H${coordinate(to)}`,
      stroke: paint('quiet'),
      'stroke-width': 0.9,
      fill: 'none',
    }),
    draw(
      'text',
      {
        x: wide ? (from + to) / 2 : to + 5,
        y: wide ? yPx - 5 : yPx + 4,
        'font-size': 12,
        'text-anchor': wide ? 'middle' : 'start',
        fill: paint('ink'),
      },
      [words],
    ),
  ])
}

/** The spacing of the first holes over the leaf; that of the grooves where there are no holes. */
export const spacingMeasure = (input: SectionInput, plan: SectionPlan): Drawing | null => {
  if (input.state === 'before') return null
  const tines = input.tines?.[0]
  const blades = input.blades?.[0]
  const spacingMm = tines?.acrossMm ?? blades?.bladeSpacingMm
  if (spacingMm === undefined) return null
  const sets = tines === undefined ? (blades?.passes ?? 1) : input.tines?.length
  const [first, second] = cutsAcross(spacingMm, plan.widthMm, 0, sets)
  return measure(plan, [first, second], quantityWords('tine', spacingMm, input.units), plan.groundPx - 24)
}
