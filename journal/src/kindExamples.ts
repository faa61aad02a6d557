import type { Plan, Prescription } from '@swardwright/engine'

/** A small prescription that is valid: core one green, dress it, drag it in. Invented figures. */
export const EXAMPLE_PRESCRIPTION: Prescription = {
  version: 1,
  name: 'August renovation',
  groups: [
    {
      id: 'all',
      name: 'All greens',
      greens: 'all',
      cores: 'lift',
      workedBackShare: 0,
      sand: {
        kind: 'kilnDried',
        surfaceMm: 1,
        fillFactor: 0.85,
        lossPercent: 5,
        bulkDensityKgPerM3: 1550,
        moisturePercent: 0,
      },
      chain: [
        {
          operation: 'core',
          passes: 1,
          effects: ['opens'],
          tines: {
            holeDiameterMm: 13,
            coreDiameterMm: 9,
            acrossMm: 50,
            alongMm: 50,
            depthMm: 50,
            setLifeGreens: 9,
          },
        },
        { operation: 'collect', passes: 1, effects: ['clears'] },
        { operation: 'dress', passes: 1, effects: ['dresses'] },
        { operation: 'dragIn', passes: 1, effects: ['finishes'], drySand: true },
      ],
    },
  ],
}

/** A plan that is valid in form: nothing planned yet. */
export const EXAMPLE_PLAN: Plan = {
  version: 1,
  course: { id: 'example', hash: '00000000' },
  prescription: EXAMPLE_PRESCRIPTION,
  start: '2026-08-10',
  seed: 1,
  schedules: 0,
  assumed: [],
  tasks: [],
  openings: [],
  posts: [],
  days: [],
  sand: [],
  unplanned: [],
  feasible: true,
  objective: {
    unfinishedGreens: 0,
    fixtureClashes: 0,
    shutGreenDays: 0,
    finish: null,
    overtimeMin: 0,
    travelMin: 0,
  },
}
