import { draw, sheet, type Drawing } from './drawing.ts'
import { greenDrawing, walkDrawing } from './map/greens.ts'
import { labelsDrawing } from './map/labels.ts'
import { landDrawing } from './map/land.ts'
import { northArrow, scaleBar } from './map/furniture.ts'
import { mapPlan, type CourseMapInput } from './map/map-input.ts'
import { signGroups, signsDrawing } from './map/signs.ts'
import { patternDefinitions } from './patterns.ts'

/**
 * The course as a drawn map, north up, all to one scale: greens with their state, tees, bunkers, water, wood, tracks, shed and bays;
 * numbers or names; the order of work as a numbered walk. Needs no network. Parts: `green`, `leg`, `step`, `label`, and each kind of place.
 */
export const courseMap = (input: CourseMapInput): Drawing => {
  const plan = mapPlan(input.ground, input.widthPx)
  const signs = signGroups(input.ground, plan)
  return sheet({ widthPx: plan.widthPx, heightPx: plan.heightPx, label: 'Map of the course' }, [
    patternDefinitions(input.scope, ['water', 'shut', 'grit']),
    draw('g', {}, landDrawing(input, plan)),
    draw(
      'g',
      {},
      input.ground.greens.map((green) => greenDrawing(green, input, plan)),
    ),
    draw('g', { 'pointer-events': 'none' }, walkDrawing(input, plan)),
    draw('g', {}, signsDrawing(signs)),
    draw('g', {}, labelsDrawing(input, plan, signs)),
    scaleBar(input, plan),
    northArrow(plan),
  ])
}
