import type { Course } from '../course/course.ts'
import type { ChainStep, Prescription, PrescriptionGroup, SandSetting } from './prescription.ts'

/** Sand as most clubs put it on; figures are common practice, no source. */
const USUAL_SAND: SandSetting = {
  kind: 'damp',
  surfaceMm: 1,
  fillFactor: 0.85,
  lossPercent: 3,
  bulkDensityKgPerM3: 1550,
  moisturePercent: 5,
}

/** Coring as most clubs set it in August: 12 mm holes at 50 x 50 mm, 75 mm deep (common practice, no source). */
const CORE: ChainStep = {
  operation: 'core',
  passes: 1,
  effects: ['opens'],
  tines: { holeDiameterMm: 12, coreDiameterMm: 9, acrossMm: 50, alongMm: 50, depthMm: 75, setLifeGreens: 10 },
}

const SMALL_CORE: ChainStep = {
  ...CORE,
  tines: { holeDiameterMm: 8, coreDiameterMm: 6, acrossMm: 50, alongMm: 50, depthMm: 50, setLifeGreens: 12 },
}

const SCARIFY: ChainStep = {
  operation: 'scarify',
  passes: 2,
  effects: [],
  blades: { bladeWidthMm: 2, bladeSpacingMm: 40, depthMm: 8 },
}

const step = (
  operation: ChainStep['operation'],
  passes: number,
  effects: ChainStep['effects'] = [],
): ChainStep => ({
  operation,
  passes,
  effects,
})

/** Sand, then dry, then dragged in and rolled. */
const FINISH: readonly ChainStep[] = [
  step('dress', 1, ['dresses']),
  { ...step('dragIn', 2), drySand: true },
  step('roll', 1, ['finishes']),
]

const group = (
  about: Pick<PrescriptionGroup, 'id' | 'name' | 'greens' | 'cores' | 'workedBackShare'>,
  chain: readonly ChainStep[],
): PrescriptionGroup => ({ ...about, sand: USUAL_SAND, chain: [...chain] })

/**
 * What most clubs would do, to start from: core, scarify, scarify turned, collect, brush in, blow, cut, cut across, dress, drag in, roll;
 * weak greens with small tines and without scarifying; soil greens with all cores lifted, since those are not mostly sand (common practice, no source).
 */
export const usualPrescription = (course: Course): Prescription => {
  const weak = course.greens.filter((green) => green.weak).map((green) => green.id)
  const soil = course.greens
    .filter((green) => !green.weak && green.rootzone.kind === 'soil')
    .map((green) => green.id)
  const gentle = [SMALL_CORE, step('collect', 1), step('blow', 1, ['clears']), step('cut', 1), ...FINISH]
  const lifted = [CORE, SCARIFY, step('collect', 1), step('blow', 1, ['clears']), step('cut', 2), ...FINISH]
  const recycled = [
    CORE,
    SCARIFY,
    step('collect', 1),
    step('brushIn', 1),
    step('blow', 1, ['clears']),
    step('cut', 2),
    ...FINISH,
  ]
  return {
    version: 1,
    name: 'The usual renovation',
    groups: [
      ...(weak.length === 0
        ? []
        : [
            group(
              {
                id: 'weak',
                name: 'Weak greens: small tines, no scarifying',
                greens: weak,
                cores: 'lift',
                workedBackShare: 0,
              },
              gentle,
            ),
          ]),
      ...(soil.length === 0
        ? []
        : [
            group(
              {
                id: 'soil',
                name: 'Soil greens: all cores lifted',
                greens: soil,
                cores: 'lift',
                workedBackShare: 0,
              },
              lifted,
            ),
          ]),
      group(
        {
          id: 'usual',
          name: 'All other greens: core, scarify twice, dress',
          greens: 'all',
          cores: 'breakUp',
          workedBackShare: 0.3,
        },
        recycled,
      ),
    ],
  }
}
