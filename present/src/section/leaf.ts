import { coordinate, draw, part, type Drawing } from '../drawing.ts'
import { patternFill } from '../patterns.ts'
import { scatteredOnLine } from '../scatter.ts'
import { paint } from '../tokens.ts'
import { figureOf, unitMark } from '../units.ts'
import type { Opening } from './openings.ts'
import type { SectionInput, SectionPlan } from './section-input.ts'

/** Length of the leaf above ground, mm: a usual height of cut on greens (common practice, no source). */
const LEAF_MM = 4
/** Distance between drawn leaves, mm. */
const LEAF_SPACING_MM = 0.75

const isOpen = (mm: number, openings: readonly Opening[]): boolean =>
  openings.some((opening) => Math.abs(mm - opening.centreMm) < opening.widthMm / 2)

/** The leaf along the ground line. No leaf stands over a hole or a groove. */
const leafDrawing = (plan: SectionPlan, openings: readonly Opening[]): Drawing => {
  const leaves = (shade: 0 | 1): string =>
    Array.from({ length: Math.floor(plan.widthMm / LEAF_SPACING_MM) }, (_, n) => n)
      .filter((n) => n % 2 === shade && !isOpen((n + 0.5) * LEAF_SPACING_MM, openings))
      .map((n) => {
        const heightPx = LEAF_MM * plan.pxPerMm * (0.72 + 0.28 * scatteredOnLine(n))
        const leanPx = (scatteredOnLine(n * 2 + 1) - 0.5) * plan.pxPerMm * 2.2
        const x = coordinate(plan.xPx((n + 0.5) * LEAF_SPACING_MM))
        return `M${x} ${coordinate(plan.groundPx + 1)}q${coordinate(leanPx * 0.2)} ${coordinate(-heightPx * 0.6)} ${coordinate(leanPx)} ${coordinate(-heightPx)}`
      })
      .join('')
  const stroke = { fill: 'none', 'stroke-linecap': 'round', 'stroke-width': Math.max(1, plan.pxPerMm * 0.42) }
  return part('leaf', 'leaf', 'leaf', [
    draw('path', { ...stroke, d: leaves(0), stroke: paint('turf') }),
    draw('path', { ...stroke, d: leaves(1), stroke: paint('leaf') }),
  ])
}

/** The ground line, broken where the green is open. */
const groundLine = (plan: SectionPlan, openings: readonly Opening[]): Drawing => {
  const leftMm = (opening: Opening): number => opening.centreMm - opening.widthMm / 2
  const edges = [...openings].sort((a, b) => leftMm(a) - leftMm(b))
  let fromMm = 0
  const stretches: string[] = []
  const stretch = (toMm: number): void => {
    if (toMm > fromMm)
      stretches.push(
        `M${coordinate(plan.xPx(fromMm))} ${plan.groundPx}H${coordinate(plan.xPx(Math.min(toMm, plan.widthMm)))}`,
      )
  }
  for (const opening of edges) {
    stretch(leftMm(opening))
    fromMm = Math.max(fromMm, opening.centreMm + opening.widthMm / 2)
  }
  stretch(plan.widthMm)
  return draw('path', { d: stretches.join(''), stroke: paint('loam'), 'stroke-width': 1.4, fill: 'none' })
}

/** Sand lying on the surface, as thick as was asked for; only on a finished green. */
const surfaceSand = (input: SectionInput, plan: SectionPlan): readonly Drawing[] => {
  const surfaceMm = input.sand?.surfaceMm ?? 0
  if (input.state !== 'after' || surfaceMm <= 0) return []
  const box = {
    x: plan.leftPx,
    y: plan.yPx(-surfaceMm),
    width: plan.widthMm * plan.pxPerMm,
    height: surfaceMm * plan.pxPerMm,
  }
  const words = `${figureOf('depth', surfaceMm, input.units)} ${unitMark('depth', input.units)} of sand on the surface`
  return [
    part('surfaceSand', 'surface', words, [
      draw('rect', { ...box, fill: paint('sand'), 'data-fill': 'sand' }),
      draw('rect', { ...box, fill: patternFill(input.scope, 'grit') }),
    ]),
  ]
}

/** All that stands or lies on the ground line: sand first, the leaf through it. */
export const surfaceDrawing = (
  input: SectionInput,
  plan: SectionPlan,
  openings: readonly Opening[],
): readonly Drawing[] => [
  ...surfaceSand(input, plan),
  leafDrawing(plan, openings),
  groundLine(plan, openings),
]
