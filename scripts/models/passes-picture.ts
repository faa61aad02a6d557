import { equivalentEllipse, planPasses, TYPICAL_MACHINES } from '@swardwright/engine'
import { linePlot } from './line-plot.ts'
import { COLOUR } from './svg.ts'

const AREA_M2 = 500
const STEP_DEG = 3

/** Time of a pass by its heading on a long and on a nearly round green. */
export const passesPicture = (): string => {
  const { widthM, overlapM, speedMPerS, turnS } = TYPICAL_MACHINES.mower
  const settings = {
    widthM,
    overlapM,
    speedMPerS,
    turnS,
    turnRadiusM: 0,
    turnStyle: 'lift',
    laps: 0,
    order: 'backAndForth',
  } as const
  const timeOn = (spansM: readonly [number, number]) => {
    const polygon = equivalentEllipse({ areaM2: AREA_M2, spansM })
    return Array.from({ length: 180 / STEP_DEG + 1 }, (_, k): readonly [number, number] => [
      k * STEP_DEG,
      Number(planPasses(polygon, settings, k * STEP_DEG).timeMin.toFixed(2)),
    ])
  }
  return linePlot({
    title: `Minutes to cut ${AREA_M2} m2 once, by the heading of the runs`,
    x: {
      words: 'heading of the runs, degrees from the long axis',
      ticks: Array.from({ length: 7 }, (_, k) => k * 30),
    },
    y: { words: 'minutes', ticks: [8, 10, 12, 14, 16, 18] },
    lines: [
      { name: 'twice as long as wide', colour: COLOUR.leaf, points: timeOn([2, 1]), shiftPx: 12 },
      { name: 'nearly round', colour: COLOUR.rain, points: timeOn([1.1, 1]), shiftPx: -8 },
    ],
  })
}
