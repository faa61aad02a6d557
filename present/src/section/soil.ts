import { coordinate, draw, part, type Drawing } from '../drawing.ts'
import { inkLine } from '../ink-line.ts'
import { decimal, fixedDecimal } from '../numbers.ts'
import { scattered } from '../scatter.ts'
import { paint } from '../tokens.ts'
import { figureOf, unitMark } from '../units.ts'
import type { SectionInput, SectionLayer, SectionPlan } from './section-input.ts'

/** How dark a layer is drawn: from pale sand at 0 % to loam at 12 % and over. Ours; only the order matters to the eye. */
export const soilDarkness = (organicPercent: number): number =>
  Math.min(0.94, 0.2 + Math.max(0, organicPercent) * 0.062)

/** Marks per square centimetre of drawing: grains of sand, and flecks of organic matter for each percent of it. */
const GRAINS_PER_CM2 = 26
const FLECKS_PER_CM2_AND_PERCENT = 5
const PX_PER_CM = 37.8

/** What a layer tells on touch: '20 to 40 mm: 4.2 % organic matter, 1.26 kg/m2'. */
export const layerWords = (layer: SectionLayer, input: SectionInput): string => {
  const depth = (mm: number): string => figureOf('depth', mm, input.units)
  const mass =
    layer.organicKgPerM2 === undefined ? '' : `, ${fixedDecimal(layer.organicKgPerM2, 2)} kg/m\u00b2`
  return `${depth(layer.fromMm)} to ${depth(layer.toMm)} ${unitMark('depth', input.units)}: ${decimal(layer.organicPercent, 1)} % organic matter${mass}`
}

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** Dots spread evenly over a box, as one path of round strokes of no length. */
const stipple = (box: Box, count: number, size: number, colour: string): Drawing =>
  draw('path', {
    d: Array.from({ length: count }, (_, n) => {
      const { u, v } = scattered(n + 1 + Math.round(box.y))
      return `M${coordinate(box.x + u * box.width)} ${coordinate(box.y + v * box.height)}h0`
    }).join(''),
    stroke: colour,
    'stroke-width': size,
    'stroke-linecap': 'round',
    fill: 'none',
  })

const bandBox = (plan: SectionPlan, fromMm: number, toMm: number): Box => ({
  x: plan.leftPx,
  y: plan.yPx(fromMm),
  width: plan.widthMm * plan.pxPerMm,
  height: Math.max(0, (Math.min(toMm, plan.depthMm) - fromMm) * plan.pxPerMm),
})

const layerDrawing = (layer: SectionLayer, input: SectionInput, plan: SectionPlan): Drawing => {
  const box = bandBox(plan, layer.fromMm, layer.toMm)
  const cm2 = (box.width * box.height) / (PX_PER_CM * PX_PER_CM)
  return part('layer', `${layer.fromMm}-${layer.toMm}`, layerWords(layer, input), [
    draw('rect', { ...box, fill: paint('sand') }),
    draw('rect', { ...box, fill: paint('loam'), 'fill-opacity': soilDarkness(layer.organicPercent) }),
    stipple(box, Math.round(cm2 * GRAINS_PER_CM2), 1.3, paint('sand')),
    stipple(
      { ...box, y: box.y + 0.5 },
      Math.round(cm2 * FLECKS_PER_CM2_AND_PERCENT * Math.min(15, layer.organicPercent)),
      1.7,
      paint('loam'),
    ),
    draw('path', {
      d: inkLine([box.x, box.y + box.height], [box.x + box.width, box.y + box.height], 1.2),
      stroke: paint('loam'),
      'stroke-width': 0.8,
      'stroke-opacity': 0.55,
      fill: 'none',
    }),
  ])
}

/** Stretches of the cut that no layer covers. */
export const unmeasured = (
  layers: readonly SectionLayer[],
  depthMm: number,
): readonly { readonly fromMm: number; readonly toMm: number }[] => {
  const gaps: { fromMm: number; toMm: number }[] = []
  let reachedMm = 0
  for (const layer of [...layers].sort((a, b) => a.fromMm - b.fromMm)) {
    if (layer.fromMm > reachedMm) gaps.push({ fromMm: reachedMm, toMm: Math.min(layer.fromMm, depthMm) })
    reachedMm = Math.max(reachedMm, layer.toMm)
  }
  if (reachedMm < depthMm) gaps.push({ fromMm: reachedMm, toMm: depthMm })
  return gaps.filter((gap) => gap.fromMm < depthMm)
}

const unmeasuredDrawing = (gap: { fromMm: number; toMm: number }, plan: SectionPlan): Drawing => {
  const box = bandBox(plan, gap.fromMm, gap.toMm)
  return part('unmeasured', `${gap.fromMm}-${gap.toMm}`, `${gap.fromMm} to ${gap.toMm} mm: not measured`, [
    draw('rect', { ...box, fill: paint('sand'), 'fill-opacity': 0.42 }),
    stipple(box, Math.round((box.width * box.height) / 420), 1.2, paint('thatch')),
  ])
}

/** The thatch band: a mat of lying fibres, as thick as it was measured. */
const thatchDrawing = (thatchMm: number, input: SectionInput, plan: SectionPlan): Drawing => {
  const box = bandBox(plan, 0, thatchMm)
  const fibre = (n: number, length: number, colour: string, width: number): Drawing =>
    draw('path', {
      d: Array.from({ length: Math.round((box.width * box.height) / n) }, (_, at) => {
        const { u, v } = scattered(at + 7)
        const lean = (scattered(at * 3 + 1).v - 0.5) * 9
        const x = box.x + u * Math.max(0, box.width - length)
        const y = Math.min(box.y + box.height - 1, Math.max(box.y + 1, box.y + v * box.height))
        const endY = Math.min(box.y + box.height - 1, Math.max(box.y + 1, y + lean))
        return `M${coordinate(x)} ${coordinate(y)}q${coordinate(length / 2)} ${coordinate(-lean / 2)} ${coordinate(length)} ${coordinate(endY - y)}`
      }).join(''),
      stroke: colour,
      'stroke-width': width,
      'stroke-linecap': 'round',
      fill: 'none',
    })
  const words = `thatch, ${figureOf('depth', thatchMm, input.units)} ${unitMark('depth', input.units)}`
  return part('thatch', 'thatch', words, [
    draw('rect', { ...box, fill: paint('thatch') }),
    fibre(38, 13, paint('loam'), 1.1),
    fibre(60, 9, paint('sand'), 0.8),
    draw('path', {
      d: inkLine([box.x, box.y + box.height], [box.x + box.width, box.y + box.height], 1.6),
      stroke: paint('loam'),
      'stroke-width': 1.1,
      fill: 'none',
    }),
  ])
}

/** Layers, what is not measured, and the thatch over them. */
export const soilDrawing = (input: SectionInput, plan: SectionPlan): readonly Drawing[] => [
  ...unmeasured(input.layers, plan.depthMm).map((gap) => unmeasuredDrawing(gap, plan)),
  ...input.layers
    .filter((layer) => layer.fromMm < plan.depthMm)
    .map((layer) => layerDrawing(layer, input, plan)),
  ...(input.thatchMm === undefined || input.thatchMm <= 0
    ? []
    : [thatchDrawing(Math.min(input.thatchMm, plan.depthMm), input, plan)]),
]
