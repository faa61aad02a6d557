import { holeAreaMm2 } from '@swardwright/engine'
import { coordinate, draw, part, type Drawing, type DrawingChild } from '../drawing.ts'
import { inkLine } from '../ink-line.ts'
import { decimal } from '../numbers.ts'
import { patternFill } from '../patterns.ts'
import { scattered } from '../scatter.ts'
import { paint } from '../tokens.ts'
import { figureOf, unitMark } from '../units.ts'
import {
  cutsAcross,
  type SectionBlades,
  type SectionInput,
  type SectionPlan,
  type SectionTines,
} from './section-input.ts'

/** One hole or groove as it meets the cut. */
export type Opening = {
  readonly kind: 'hole' | 'groove'
  readonly id: string
  readonly centreMm: number
  readonly widthMm: number
  readonly depthMm: number
  /** Width of the core taken out; 0 where there is none. */
  readonly coreMm: number
  readonly words: string
}

/** Cubic millimetres in a millilitre. */
const MM3_PER_ML = 1000

/** What a hole tells on touch: 'hole 13 mm, core 10 mm, 75 mm deep: 10 ml, core 5.9 ml'. */
const holeWords = (tines: SectionTines, input: SectionInput): string => {
  const tine = (mm: number): string => `${figureOf('tine', mm, input.units)} ${unitMark('tine', input.units)}`
  const ml = (mm: number): string => `${decimal((holeAreaMm2(mm) * tines.depthMm) / MM3_PER_ML, 1)} ml`
  const depth = `${figureOf('depth', tines.depthMm, input.units)} ${unitMark('depth', input.units)} deep`
  return tines.coreDiameterMm > 0
    ? `hole ${tine(tines.holeDiameterMm)}, core ${tine(tines.coreDiameterMm)}, ${depth}: holds ${ml(tines.holeDiameterMm)}, core ${ml(tines.coreDiameterMm)}`
    : `solid hole ${tine(tines.holeDiameterMm)}, ${depth}: holds ${ml(tines.holeDiameterMm)}`
}

const grooveWords = (blades: SectionBlades, input: SectionInput): string => {
  const mlPerM = decimal((blades.bladeWidthMm * blades.depthMm * 1000) / MM3_PER_ML, 0)
  return `groove ${figureOf('tine', blades.bladeWidthMm, input.units)} ${unitMark('tine', input.units)} wide, ${figureOf('depth', blades.depthMm, input.units)} ${unitMark('depth', input.units)} deep: ${mlPerM} ml a metre`
}

/** All openings that this section meets, from left to right within each setting. None before the work. */
export const openingsOf = (input: SectionInput, plan: SectionPlan): readonly Opening[] => {
  if (input.state === 'before') return []
  const grooves = (input.blades ?? []).flatMap((blades, setting) =>
    Array.from({ length: blades.passes }, (_, pass) =>
      cutsAcross(blades.bladeSpacingMm, plan.widthMm, pass, blades.passes).map((centreMm, n): Opening => ({
        kind: 'groove',
        id: `groove-${setting + 1}-${pass + 1}-${n + 1}`,
        centreMm,
        widthMm: blades.bladeWidthMm,
        depthMm: blades.depthMm,
        coreMm: 0,
        words: grooveWords(blades, input),
      })),
    ).flat(),
  )
  const holes = (input.tines ?? []).flatMap((tines, setting) =>
    cutsAcross(tines.acrossMm, plan.widthMm, setting, input.tines?.length).map((centreMm, n): Opening => ({
      kind: 'hole',
      id: `hole-${setting + 1}-${n + 1}`,
      centreMm,
      widthMm: tines.holeDiameterMm,
      depthMm: tines.depthMm,
      coreMm: tines.coreDiameterMm,
      words: holeWords(tines, input),
    })),
  )
  return [...grooves, ...holes]
}

const wall = (x: number, top: number, bottom: number): Drawing =>
  draw('path', {
    d: inkLine([x, top], [x, bottom], 0.5),
    stroke: paint('loam'),
    'stroke-width': 1.2,
    fill: 'none',
  })

/** Soil that fell back where no sand reaches. */
const crumbs = (x: number, y: number, width: number, height: number): Drawing =>
  draw('g', { fill: paint('loam') }, [
    draw('rect', { x, y, width, height, fill: paint('sand') }),
    draw('rect', { x, y, width, height, 'fill-opacity': 0.45 }),
    ...Array.from({ length: Math.max(1, Math.round((width * height) / 30)) }, (_, n) => {
      const { u, v } = scattered(n + Math.round(x))
      const r = Math.min(width / 2, 0.9 + scattered(n).u * 1.3)
      return draw('circle', {
        cx: x + r + u * Math.max(0, width - 2 * r),
        cy: y + r + v * Math.max(0, height - 2 * r),
        r,
      })
    }),
  ])

/** Sand in an opening: from the top down to its share of the depth; loose soil lies below. */
const filling = (opening: Opening, input: SectionInput, plan: SectionPlan): readonly DrawingChild[] => {
  if (input.state !== 'after' || input.sand === undefined || input.sand.filledShare <= 0) return []
  const filledMm = opening.depthMm * Math.min(1, input.sand.filledShare)
  const shownMm = Math.min(filledMm, plan.depthMm)
  const box = {
    x: plan.xPx(opening.centreMm - opening.widthMm / 2),
    y: plan.groundPx,
    width: opening.widthMm * plan.pxPerMm,
    height: shownMm * plan.pxPerMm,
  }
  const restMm = Math.min(opening.depthMm, plan.depthMm) - shownMm
  return [
    draw('rect', { ...box, fill: paint('sand'), 'data-fill': 'sand' }),
    draw('rect', { ...box, fill: patternFill(input.scope, 'grit') }),
    restMm > 0 ? crumbs(box.x, box.y + box.height, box.width, restMm * plan.pxPerMm) : null,
  ]
}

/** Dotted walls of the core inside the hole. */
const coreLines = (
  opening: Opening,
  bottomPx: number,
  input: SectionInput,
  plan: SectionPlan,
): readonly DrawingChild[] =>
  opening.coreMm <= 0
    ? []
    : [
        draw('rect', {
          x: plan.xPx(opening.centreMm - opening.coreMm / 2),
          y: plan.groundPx,
          width: opening.coreMm * plan.pxPerMm,
          height: bottomPx - plan.groundPx,
          fill: 'none',
          // On sand the line is dark in every twin; in an empty hole it follows the page, or the night would hide it.
          stroke: paint(input.state === 'after' ? 'loam' : 'quiet'),
          'stroke-width': 1,
          'stroke-dasharray': '1 3',
          'stroke-linecap': 'round',
          'data-line': 'core',
        }),
      ]

/** A hole that goes deeper than the cut: an arrow, and the depth where there is room for it. */
const furtherDown = (x: number, bottom: number, opening: Opening, input: SectionInput): Drawing => {
  const roomy = opening.widthMm * input.pxPerMm >= 30
  return draw('g', { 'data-line': 'deeper' }, [
    draw('path', {
      d: `M${coordinate(x)} ${coordinate(bottom - 22)}v15m-4 -5l4 6l4 -6`,
      stroke: paint('ink'),
      'stroke-width': 1.2,
      fill: 'none',
    }),
    roomy
      ? draw('text', { x, y: bottom - 28, 'font-size': 12, 'text-anchor': 'middle', fill: paint('ink') }, [
          figureOf('depth', opening.depthMm, input.units),
        ])
      : null,
  ])
}

/** One opening: its room, what fills it, its walls, the core dotted. A hole deeper than the cut runs off the bottom. */
export const openingDrawing = (opening: Opening, input: SectionInput, plan: SectionPlan): Drawing => {
  const left = plan.xPx(opening.centreMm - opening.widthMm / 2)
  const right = plan.xPx(opening.centreMm + opening.widthMm / 2)
  const bottom = plan.yPx(Math.min(opening.depthMm, plan.depthMm))
  const ends = opening.depthMm <= plan.depthMm
  return part(opening.kind, opening.id, opening.words, [
    draw('rect', {
      x: left,
      y: plan.groundPx,
      width: right - left,
      height: bottom - plan.groundPx,
      fill: paint('wash'),
      'data-room': opening.kind,
    }),
    ...filling(opening, input, plan),
    ...coreLines(opening, bottom, input, plan),
    wall(left, plan.groundPx, bottom),
    wall(right, plan.groundPx, bottom),
    ends
      ? draw('path', {
          d: inkLine([left, bottom], [right, bottom], 0.4),
          stroke: paint('loam'),
          'stroke-width': 1.2,
          fill: 'none',
        })
      : furtherDown((left + right) / 2, bottom, opening, input),
  ])
}
