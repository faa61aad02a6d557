import { holeShare, unionOfPasses } from '@swardwright/engine'
import { COLOUR, label, picture, shape } from './svg.ts'

/** Settings of the drawing: a 12 mm tine, 9 mm inside, at 50 x 50 mm. */
const HOLE_MM = 12
const CORE_MM = 9
const SPACING_MM = 50
const PX_PER_MM = 3
const SIDE_MM = 100

/** A second pass falls at random; this is one way it may fall. */
const SECOND_PASS = { xMm: 22, yMm: 28 }

const holes = (offset: { readonly xMm: number; readonly yMm: number }, colour: string): readonly string[] => {
  const steps = Array.from({ length: SIDE_MM / SPACING_MM }, (_, i) => i * SPACING_MM)
  return steps.flatMap((x) =>
    steps.flatMap((y) => {
      const [cx, cy] = [20 + (x + offset.xMm) * PX_PER_MM, 40 + (y + offset.yMm) * PX_PER_MM]
      return [
        shape('circle', { cx, cy, r: (HOLE_MM / 2) * PX_PER_MM, fill: colour }),
        shape('circle', {
          cx,
          cy,
          r: (CORE_MM / 2) * PX_PER_MM,
          fill: 'none',
          stroke: COLOUR.paper,
          'stroke-dasharray': '4 3',
        }),
      ]
    }),
  )
}

/** Two passes of holes seen from above, with the three shares. */
export const patternPicture = (): string => {
  const share = holeShare(1e6 / SPACING_MM ** 2, HOLE_MM)
  const inside = holeShare(1e6 / SPACING_MM ** 2, CORE_MM)
  const percent = (value: number): string => `${(100 * value).toFixed(2)} %`
  const lines = [
    [`one pass, outside of the tine: ${percent(share)}`, COLOUR.ink],
    [`one pass, inside (the cores): ${percent(inside)}`, COLOUR.ink],
    [`two passes added up: ${percent(2 * share)}`, COLOUR.rust],
    [`two passes, touched at least once: ${percent(unionOfPasses(share, 2))}`, COLOUR.leaf],
  ] as const
  return picture(640, 360, 'Two passes of 12 mm tines at 50 x 50 mm, seen from above', [
    label(16, 22, '12 mm tines (9 mm inside) at 50 x 50 mm, seen from above: 100 x 100 mm of green', {
      'font-weight': 'bold',
    }),
    shape('rect', {
      x: 20,
      y: 40,
      width: SIDE_MM * PX_PER_MM,
      height: SIDE_MM * PX_PER_MM,
      fill: '#dfe8d8',
      stroke: COLOUR.ink,
    }),
    ...holes({ xMm: 14, yMm: 34 }, COLOUR.loam),
    ...holes(SECOND_PASS, COLOUR.rust),
    ...lines.map(([text, fill], i) => label(340, 80 + 28 * i, text, { fill })),
    label(340, 230, 'dark: first pass, red: second pass', { fill: COLOUR.quiet }),
    label(340, 252, 'dotted ring: inside of the tine', { fill: COLOUR.quiet }),
  ])
}
