import { grooveShare, holeShare, removedMasses, type Layer } from '@swardwright/engine'
import { COLOUR, label, picture, shape } from './svg.ts'

/** The gradient printed in Woods 2021, to 80 mm. */
const LAYERS: readonly Layer[] = [
  { fromMm: 0, toMm: 20, organicPercent: 6.7 },
  { fromMm: 20, toMm: 40, organicPercent: 3.1 },
  { fromMm: 40, toMm: 60, organicPercent: 2 },
  { fromMm: 60, toMm: 80, organicPercent: 1.6 },
]

const PX_PER_MM = 3
const TOP = 60
const SOIL = { x: 60, width: 260 }

/** Darker for more organic matter. */
const soil = (organicPercent: number): string =>
  `rgb(${[216, 184, 120].map((c) => Math.round(c - organicPercent * 14)).join(' ')})`

const layer = ({ fromMm, toMm, organicPercent }: Layer): readonly string[] => {
  const y = TOP + fromMm * PX_PER_MM
  return [
    shape('rect', { ...SOIL, y, height: (toMm - fromMm) * PX_PER_MM, fill: soil(organicPercent) }),
    label(SOIL.x - 8, y + 12, `${fromMm} mm`, { 'text-anchor': 'end', fill: COLOUR.quiet }),
    label(SOIL.x + SOIL.width + 10, y + 34, `${organicPercent} % organic`),
  ]
}

/** A cut through a green with two cores and a few grooves, and the grams of organic matter that leave by each. */
export const profilePicture = (): string => {
  const cores = removedMasses(LAYERS, 70, holeShare(400, 12))
  const grooves = removedMasses(LAYERS, 19, grooveShare(3, 25.4))
  const opening = (xMm: number, widthMm: number, depthMm: number): string =>
    shape('rect', {
      x: SOIL.x + xMm * PX_PER_MM,
      y: TOP,
      width: widthMm * PX_PER_MM,
      height: depthMm * PX_PER_MM,
      fill: COLOUR.paper,
      stroke: COLOUR.ink,
    })
  return picture(640, 330, 'What a core and a groove reach in the profile', [
    label(16, 22, 'What a core and a groove reach, and the organic matter that leaves with them', {
      'font-weight': 'bold',
    }),
    shape('line', {
      x1: SOIL.x,
      x2: SOIL.x + SOIL.width,
      y1: TOP - 4,
      y2: TOP - 4,
      stroke: COLOUR.leaf,
      'stroke-width': '6',
    }),
    ...LAYERS.flatMap(layer),
    opening(8, 12, 70),
    opening(45, 3, 19),
    opening(70.4, 3, 19),
    label(455, 100, 'cores 12 mm, 50 x 50 mm,'),
    label(455, 118, `70 mm deep: ${cores.organicGPerM2.toFixed(0)} g/m2`, { fill: COLOUR.rust }),
    label(455, 160, 'blades 3 mm at 25.4 mm,'),
    label(455, 178, `19 mm deep: ${grooves.organicGPerM2.toFixed(0)} g/m2`, { fill: COLOUR.rust }),
    label(455, 220, 'Grams taken out are not', { fill: COLOUR.quiet }),
    label(455, 238, 'a lower percentage.', { fill: COLOUR.quiet }),
  ])
}
