import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { count, figure, quantity } from '../catalogue/quantity.ts'
import { fail, ok } from '../result.ts'
import { drivenMinutes, turnMinutes } from './pass-minutes.ts'
import { stripCount } from './strip-sheet.ts'
import { trayTest } from './tray-test.ts'

const speedMPerS = quantity({ meaning: 'Working speed', unit: 'm/s', min: 0.02, max: 6, symbol: 'v' })

/** 435 m at 1 m/s = 435 s; 14 turns of 10 s = 140 s: 575 s. The rectangle of 17 x 29 m at 1.2 m. */
const RECTANGLE = { runLengthM: 435, speedMPerS: 1, turns: 14, turnS: 10, betweenM: 0 }

/** `passes.time`: how long a machine is at work on a green once its runs are laid out. */
const passTimeItem = item({
  name: 'passes.time',
  title: 'Time of one pass over a green',
  words:
    'The length of all runs at working speed, and the time of one turn for each turn. Where a green is worked in pieces, the way from one to the next is driven at working speed. Filling, emptying and the way to the green are not in it.',
  formula: 't = (L / v + n t_u + B / v) / 60',
  evidence: 'handbook',
  sources: ['geometry'],
  notes: [
    'Lengths and turns come from the outline (or an ellipse of the same area, and then they are rough); speed and turn time are the machine’s.',
  ],
  inputs: v.object({
    runLengthM: quantity({ meaning: 'Length of all runs', unit: 'm', min: 0, max: 1_000_000, symbol: 'L' }),
    speedMPerS,
    turns: count({ meaning: 'Turns', min: 0, max: 100_000, symbol: 'n' }),
    turnS: quantity({ meaning: 'Time of one turn', unit: 's', min: 0, max: 600, symbol: 't_u' }),
    betweenM: quantity({
      meaning: 'Ways between pieces of the green',
      unit: 'm',
      min: 0,
      max: 100_000,
      symbol: 'B',
    }),
  }),
  outputs: v.object({
    timeMin: figure({ meaning: 'Time of the pass', unit: 'min', symbol: 't' }),
    runMin: figure({ meaning: 'Of that, at work', unit: 'min' }),
    turnMin: figure({ meaning: 'Of that, turning', unit: 'min' }),
  }),
  checks: [
    {
      id: 'PT001',
      class: 'derived',
      source: 'geometry',
      where: '(435 m / 1 m/s + 14 x 10 s) / 60 = 575 / 60 = 9.58333 min',
      input: RECTANGLE,
      output: 'timeMin',
      expected: 9.58333,
      tolerance: 1e-5,
    },
    {
      id: 'PT002',
      class: 'derived',
      source: 'geometry',
      where: '14 turns of 10 s and 30 m between pieces at 1 m/s = 170 / 60 = 2.83333 min',
      input: { ...RECTANGLE, betweenM: 30 },
      output: 'turnMin',
      expected: 2.83333,
      tolerance: 1e-5,
    },
  ],
  run: (input) => {
    const runMin = drivenMinutes(input.runLengthM, input.speedMPerS)
    const turnMin = turnMinutes(input.turns, input.turnS, input.betweenM, input.speedMPerS)
    return ok({ timeMin: runMin + turnMin, runMin, turnMin })
  },
})

/** `passes.count`: how many strips lie side by side over a green. */
const passCountItem = item({
  name: 'passes.count',
  title: 'Number of strips over a green',
  words:
    'Strips as wide as the machine, each lying over its neighbour by the overlap, from side to side of the green as it shows across the heading. A strip that the edge splits is more than one run.',
  formula: 'n = ceil((E - o) / (w - o))',
  evidence: 'handbook',
  sources: ['geometry'],
  notes: ['The strips are centred, so the machine stands over both sides of the green by the same.'],
  inputs: v.object({
    extentM: quantity({
      meaning: 'Extent of the green across the heading',
      unit: 'm',
      min: 0.1,
      max: 1000,
      symbol: 'E',
    }),
    widthM: quantity({ meaning: 'Working width', unit: 'm', min: 0.1, max: 15, symbol: 'w' }),
    overlapM: quantity({
      meaning: 'Overlap of neighbouring strips',
      unit: 'm',
      min: 0,
      max: 10,
      symbol: 'o',
    }),
  }),
  outputs: v.object({ strips: figure({ meaning: 'Strips', unit: '1', symbol: 'n' }) }),
  checks: [
    {
      id: 'PC001',
      class: 'derived',
      source: 'geometry',
      where: '17 m at 1.2 m without overlap: 17 / 1.2 = 14.17, so 15',
      input: { extentM: 17, widthM: 1.2, overlapM: 0 },
      output: 'strips',
      expected: 15,
      tolerance: 0,
    },
    {
      id: 'PC002',
      class: 'derived',
      source: 'geometry',
      where: '17 m at 1.2 m with 0.2 m overlap: 16.8 / 1.0 = 16.8, so 17',
      input: { extentM: 17, widthM: 1.2, overlapM: 0.2 },
      output: 'strips',
      expected: 17,
      tolerance: 0,
    },
  ],
  run: ({ extentM, widthM, overlapM }) =>
    overlapM >= widthM
      ? fail({
          type: 'notDefined',
          field: 'overlapM',
          unit: 'm',
          reason: 'the overlap is as wide as the machine, so no strip gets further than the last',
        })
      : ok({ strips: stripCount(extentM, widthM, overlapM) }),
})

/** `dressing.runMass`: sand that a stretch of runs takes. */
const runMassItem = item({
  name: 'dressing.runMass',
  title: 'Sand for some runs of the dresser',
  words: 'The ground that the runs spread on, times the rate.',
  formula: 'm = L b r',
  evidence: 'handbook',
  sources: ['geometry'],
  notes: [
    'The rate here is the sand of the green shared over the length of all its runs, so that loads add up to what was reckoned for the green.',
  ],
  inputs: v.object({
    lengthM: quantity({ meaning: 'Length of the runs', unit: 'm', min: 0, max: 100_000, symbol: 'L' }),
    boutM: quantity({ meaning: 'Distance between runs', unit: 'm', min: 0.1, max: 20, symbol: 'b' }),
    rateKgPerM2: quantity({ meaning: 'Sand on the ground', unit: 'kg/m2', min: 0, max: 60, symbol: 'r' }),
  }),
  outputs: v.object({ massKg: figure({ meaning: 'Sand, dry', unit: 'kg', symbol: 'm' }) }),
  checks: [
    {
      id: 'RM001',
      class: 'derived',
      source: 'geometry',
      where: '100 m x 1.5 m x 4 kg/m2 = 600 kg',
      input: { lengthM: 100, boutM: 1.5, rateKgPerM2: 4 },
      output: 'massKg',
      expected: 600,
      tolerance: 1e-9,
    },
  ],
  run: ({ lengthM, boutM, rateKgPerM2 }) => ok({ massKg: lengthM * boutM * rateKgPerM2 }),
})

/** Calculations of the ground that stand alone. */
export const GROUND_ITEMS = [trayTest, runMassItem, passCountItem, passTimeItem]
