import { coordinate, draw, type Drawing } from '../drawing.ts'
import { paint } from '../tokens.ts'
import { MM_PER_INCH } from '../units.ts'
import type { SectionPlan } from './section-input.ts'

type Tick = { readonly mm: number; readonly lengthPx: number; readonly label: string | null }

const ticks = (depthMm: number, stepMm: number, kind: (n: number) => Omit<Tick, 'mm'>): readonly Tick[] =>
  Array.from({ length: Math.floor(depthMm / stepMm + 1e-9) + 1 }, (_, n) => ({ mm: n * stepMm, ...kind(n) }))

/** Every 5 mm a tick, every 10 mm a figure. */
const millimetreTicks = (depthMm: number): readonly Tick[] =>
  ticks(depthMm, 5, (n) => ({ lengthPx: n % 2 === 0 ? 7 : 4, label: n % 2 === 0 ? String(n * 5) : null }))

/** Every quarter of an inch a tick, every inch a figure. */
const inchTicks = (depthMm: number): readonly Tick[] =>
  ticks(depthMm, MM_PER_INCH / 4, (n) => ({
    lengthPx: n % 4 === 0 ? 7 : n % 2 === 0 ? 5 : 3,
    label: n % 4 === 0 ? String(n / 4) : null,
  }))

type Side = { readonly xPx: number; readonly towards: -1 | 1; readonly mark: string }

const ruler = (plan: SectionPlan, side: Side, marks: readonly Tick[]): Drawing =>
  draw('g', { 'data-part': 'ruler', 'data-id': side.mark, fill: paint('quiet') }, [
    draw('path', {
      d:
        `M${coordinate(side.xPx)} ${plan.groundPx}V${coordinate(plan.yPx(plan.depthMm))}` +
        marks
          .map(
            ({ mm, lengthPx }) =>
              `M${coordinate(side.xPx)} ${coordinate(plan.yPx(mm))}h${side.towards * lengthPx}`,
          )
          .join(''),
      stroke: paint('quiet'),
      'stroke-width': 0.9,
      fill: 'none',
    }),
    ...marks.flatMap(({ mm, label }) =>
      label === null
        ? []
        : [
            draw(
              'text',
              {
                x: side.xPx + side.towards * 10,
                y: plan.yPx(mm) + 4,
                'font-size': 11,
                'text-anchor': side.towards < 0 ? 'end' : 'start',
              },
              [label],
            ),
          ],
    ),
    draw(
      'text',
      {
        x: side.xPx + side.towards * 10,
        y: plan.groundPx - 12,
        'font-size': 11,
        'text-anchor': side.towards < 0 ? 'end' : 'start',
      },
      [side.mark],
    ),
  ])

/** Millimetres at the left. */
export const millimetreRuler = (plan: SectionPlan): Drawing =>
  ruler(plan, { xPx: plan.leftPx - 4, towards: -1, mark: 'mm' }, millimetreTicks(plan.depthMm))

/** Inches at the right. */
export const inchRuler = (plan: SectionPlan): Drawing =>
  ruler(plan, { xPx: plan.xPx(plan.widthMm) + 4, towards: 1, mark: 'in' }, inchTicks(plan.depthMm))
