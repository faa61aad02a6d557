const ROLL_IN = [
  { operation: 'dragIn', passes: 2, effects: [], drySand: true },
  { operation: 'roll', passes: 1, effects: ['finishes'] },
]

const BIG_TINES = {
  holeDiameterMm: 10,
  coreDiameterMm: 8,
  acrossMm: 50,
  alongMm: 50,
  depthMm: 60,
  setLifeGreens: 12,
}
const SMALL_TINES = { ...BIG_TINES, holeDiameterMm: 8, coreDiameterMm: 6, depthMm: 50 }
const BLADES = { bladeWidthMm: 2, bladeSpacingMm: 40, depthMm: 8 }

/** The sand of both groups: bulk density of loose dry dressing sand (common practice, no source). */
const SAND = { surfaceMm: 1, fillFactor: 0.85, lossPercent: 3, bulkDensityKgPerM3: 1500 }

/** The demo's prescription: the usual chain for most greens, a gentler one for the three weak greens. */
export const demoPrescription = () => ({
  version: 1,
  name: 'August renovation',
  groups: [
    {
      id: 'gentle',
      name: 'Weak greens: small tines, no scarifying',
      greens: ['g05', 'g07', 'g17'],
      cores: 'lift',
      workedBackShare: 0,
      sand: { kind: 'kilnDried', ...SAND, moisturePercent: 0 },
      chain: [
        { operation: 'core', passes: 1, effects: ['opens'], tines: SMALL_TINES },
        { operation: 'collect', passes: 1, effects: [] },
        { operation: 'blow', passes: 1, effects: ['clears'] },
        { operation: 'cut', passes: 1, effects: [] },
        { operation: 'dress', passes: 1, effects: ['dresses'] },
        ...ROLL_IN,
      ],
    },
    {
      id: 'usual',
      name: 'All other greens: core, scarify twice, dress',
      greens: 'all',
      cores: 'breakUp',
      workedBackShare: 0.35,
      sand: { kind: 'damp', ...SAND, moisturePercent: 5 },
      chain: [
        { operation: 'core', passes: 1, effects: ['opens'], tines: BIG_TINES },
        { operation: 'scarify', passes: 2, effects: [], blades: BLADES },
        { operation: 'collect', passes: 1, effects: [] },
        { operation: 'brushIn', passes: 1, effects: [] },
        { operation: 'blow', passes: 1, effects: ['clears'] },
        { operation: 'cut', passes: 2, effects: [] },
        { operation: 'dress', passes: 1, effects: ['dresses'] },
        ...ROLL_IN,
      ],
    },
  ],
})
