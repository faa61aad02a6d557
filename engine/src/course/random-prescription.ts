import type { ChainStep, Prescription, PrescriptionGroup } from '../planning/prescription.ts'
import type { Green } from './course.ts'
import type { Draw } from './draw.ts'

const tines = (draw: Draw) => {
  const holeDiameterMm = draw.one([6, 8, 10, 12])
  return {
    holeDiameterMm,
    coreDiameterMm: holeDiameterMm - 2,
    acrossMm: draw.one([38, 50, 60]),
    alongMm: draw.one([38, 50, 60]),
    depthMm: draw.one([30, 45, 60, 75]),
    setLifeGreens: draw.whole(4, 20),
  }
}

const blades = (draw: Draw) => ({
  bladeWidthMm: draw.one([1, 2, 3]),
  bladeSpacingMm: draw.one([20, 30, 40]),
  depthMm: draw.one([4, 8, 12]),
})

const core = (draw: Draw): ChainStep => ({
  operation: 'core',
  passes: 1,
  effects: ['opens'],
  tines: tines(draw),
})

const finish = (draw: Draw, needsDry: boolean): ChainStep[] => [
  { operation: 'dress', passes: 1, effects: ['dresses'], ...(draw.chance(15) ? { waitMin: 20 } : {}) },
  { operation: 'dragIn', passes: draw.whole(1, 3), effects: [], drySand: needsDry },
  { operation: 'roll', passes: 1, effects: ['finishes'] },
]

/** The chains that the trade uses most, each shortened or lengthened a little by chance. */
const chains: readonly ((draw: Draw) => ChainStep[])[] = [
  // Core, scarify, collect, brush in, blow, cut.
  (draw) => [
    core(draw),
    { operation: 'scarify', passes: draw.whole(1, 2), effects: [], blades: blades(draw) },
    { operation: 'collect', passes: 1, effects: [] },
    { operation: 'brushIn', passes: 1, effects: [] },
    { operation: 'blow', passes: 1, effects: ['clears'] },
    { operation: 'cut', passes: draw.whole(1, 2), effects: [] },
  ],
  // Scarify first.
  (draw) => [
    { operation: 'scarify', passes: draw.whole(1, 2), effects: ['opens'], blades: blades(draw) },
    { operation: 'core', passes: 1, effects: [], tines: tines(draw) },
    { operation: 'collect', passes: 1, effects: [] },
    { operation: 'blow', passes: 1, effects: ['clears'] },
  ],
  // Core and lift only.
  (draw) => [
    core(draw),
    { operation: 'collect', passes: 1, effects: [] },
    { operation: 'blow', passes: 1, effects: ['clears'] },
    ...(draw.chance(50) ? [{ operation: 'cut' as const, passes: 1, effects: [] }] : []),
  ],
]

const group = (draw: Draw, greens: PrescriptionGroup['greens'], id: string): PrescriptionGroup => {
  const kind = draw.one(['damp', 'kilnDried'] as const)
  const cores = draw.one(['lift', 'breakUp'] as const)
  const opening = draw.one(chains)
  return {
    id,
    name: `Group ${id}`,
    greens,
    cores,
    workedBackShare: cores === 'lift' ? 0 : draw.stepped(0, 0.5, 0.05),
    sand: {
      kind,
      surfaceMm: draw.stepped(0, 1.5, 0.25),
      fillFactor: draw.stepped(0.7, 1, 0.05),
      lossPercent: draw.whole(0, 8),
      bulkDensityKgPerM3: draw.one([1450, 1500, 1560]),
      moisturePercent: kind === 'damp' ? draw.whole(2, 7) : 0,
    },
    chain: [...opening(draw), ...finish(draw, true)],
  }
}

/** A prescription for all greens; half the time the weak ones, where there are any, have a group of their own. */
export const randomPrescription = (draw: Draw, greens: readonly Green[]): Prescription => {
  const weak = greens.filter((green) => green.weak).map(({ id }) => id)
  const gentle = weak.length > 0 && draw.chance(50) ? [group(draw, weak, 'gentle')] : []
  return { version: 1, name: 'Random', groups: [...gentle, group(draw, 'all', 'usual')] }
}
