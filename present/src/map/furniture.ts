import { coordinate, draw, type Drawing } from '../drawing.ts'
import { decimal } from '../numbers.ts'
import { paint } from '../tokens.ts'
import { fromWantedUnit, unitMark } from '../units.ts'
import type { CourseMapInput, MapPlan } from './map-input.ts'

/** Longest bar, px. */
const BAR_PX = 120
const LENGTHS = [1000, 500, 200, 100, 50, 20, 10] as const

/** A bar of a round length in the club's unit, half black and half open, as on a survey. */
export const scaleBar = (input: CourseMapInput, plan: MapPlan): Drawing => {
  const widthOf = (length: number): number => fromWantedUnit('distance', length, input.units) * plan.pxPerM
  const length = LENGTHS.find((candidate) => widthOf(candidate) <= BAR_PX) ?? 10
  const [x, y, half] = [22, plan.heightPx - 22, widthOf(length) / 2]
  const box = { y, height: 5, width: half, stroke: paint('ink'), 'stroke-width': 1 }
  return draw('g', { 'data-part': 'scale' }, [
    draw('rect', { ...box, x, fill: paint('ink') }),
    draw('rect', { ...box, x: x + half, fill: paint('paper') }),
    draw('text', { x, y: y + 17, 'font-size': 11, fill: paint('quiet') }, ['0']),
    draw(
      'text',
      { x: x + 2 * half, y: y + 17, 'font-size': 11, 'text-anchor': 'middle', fill: paint('quiet') },
      [`${decimal(length, 0)} ${unitMark('distance', input.units)}`],
    ),
  ])
}

/** North is up; the arrow says so. */
export const northArrow = (plan: MapPlan): Drawing => {
  const [x, y] = [plan.widthPx - 26, plan.heightPx - 14]
  return draw('g', { 'data-part': 'north' }, [
    draw('path', {
      d: `M${coordinate(x)} ${coordinate(y)}V${coordinate(y - 26)}m-5 9l5 -10l5 10`,
      fill: 'none',
      stroke: paint('ink'),
      'stroke-width': 1.4,
      'stroke-linejoin': 'round',
    }),
    draw('text', { x: x + 9, y: y - 16, 'font-size': 13, 'font-weight': 650, fill: paint('ink') }, ['N']),
  ])
}
