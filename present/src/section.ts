import { draw, sheet, type Drawing } from './drawing.ts'
import { patternDefinitions } from './patterns.ts'
import { paint } from './tokens.ts'
import { quantityWords } from './units.ts'
import { surfaceDrawing } from './section/leaf.ts'
import { marginDrawing, MARGIN_PX, spacingMeasure } from './section/margin.ts'
import { openingDrawing, openingsOf } from './section/openings.ts'
import { inchRuler, millimetreRuler } from './section/rulers.ts'
import { RULER_PX, sectionPlan, type SectionInput, type SectionState } from './section/section-input.ts'
import { soilDrawing } from './section/soil.ts'

const STATE_LABEL: Readonly<Record<SectionState, string>> = {
  before: 'as it is now',
  opened: 'opened',
  after: 'finished',
}

/** Space under the cut, px. */
const BELOW_PX = 8

/**
 * A cut through the top of a green, true to scale across and down: leaf, thatch, rootzone as dark as its organic matter,
 * holes and grooves at their spacing, width and depth, the cores dotted, and sand where it fills. Parts that a person can touch:
 * `layer`, `thatch`, `unmeasured`, `hole`, `groove`, `surfaceSand`, each with what it tells as its title.
 * The cut is taken across the machine's run, so it shows `acrossMm`; a further pass of blades is drawn between the lines of the first.
 */
export const sectionDrawing = (input: SectionInput): Drawing => {
  const plan = sectionPlan(input)
  const openings = openingsOf(input, plan)
  const inches = input.units.depth === 'in'
  const rightPx = plan.xPx(plan.widthMm) + (inches ? RULER_PX - 4 : 4)
  const cut = {
    x: plan.leftPx,
    y: plan.groundPx,
    width: plan.widthMm * plan.pxPerMm,
    height: plan.depthMm * plan.pxPerMm,
  }
  const figures = input.margin !== 'none'
  return sheet(
    {
      widthPx: rightPx + (figures ? MARGIN_PX + 10 : 2),
      heightPx: plan.yPx(plan.depthMm) + BELOW_PX,
      label: `Cut through the top ${quantityWords('depth', plan.depthMm, input.units)} of the green, ${STATE_LABEL[input.state]}`,
    },
    [
      patternDefinitions(input.scope, ['grit']),
      draw('clipPath', { id: `${input.scope}-cut` }, [draw('rect', cut)]),
      draw('g', {}, soilDrawing(input, plan)),
      draw(
        'g',
        { 'clip-path': `url(#${input.scope}-cut)` },
        openings.map((opening) => openingDrawing(opening, input, plan)),
      ),
      draw('g', {}, surfaceDrawing(input, plan, openings)),
      draw('path', {
        d: `M${cut.x} ${cut.y}v${cut.height}h${cut.width}v${-cut.height}`,
        fill: 'none',
        stroke: paint('ink'),
        'stroke-width': 0.8,
        'pointer-events': 'none',
      }),
      millimetreRuler(plan),
      inches ? inchRuler(plan) : null,
      spacingMeasure(input, plan),
      figures ? marginDrawing(input, plan, rightPx + 10) : null,
    ],
  )
}
