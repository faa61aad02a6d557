import { drawFrom, type Draw } from '../../../course/draw.ts'
import type { Operation } from '../../operations.ts'
import type {
  Problem,
  ProblemDay,
  ProblemGreen,
  ProblemMachine,
  ProblemPerson,
  ProblemStep,
  Span,
} from '../../problem.ts'
import { subtractSpans } from '../../spans.ts'

/** Every time of a tiny problem is a multiple of this, minutes: then some best plan lies on the same grid, since all its rules are differences. */
export const TICK_MIN = 5

const DAY_MIN = 1440
const DAYS = 2

/** Chains short enough to try everything; each opens, clears and finishes. */
const CHAINS: readonly (readonly Operation[])[] = [
  ['core', 'roll'],
  ['core', 'blow', 'roll'],
  ['scarify', 'roll'],
  ['core', 'dress', 'dragIn'],
  ['core', 'roll', 'water'],
]

const KIND = {
  core: 'corer',
  scarify: 'scarifier',
  blow: 'blower',
  dress: 'dresser',
  dragIn: 'dragMat',
  roll: 'roller',
  water: 'hose',
} as const satisfies Partial<Record<Operation, ProblemMachine['kind']>>

const ticks = (draw: Draw, least: number, most: number): number => draw.whole(least, most) * TICK_MIN

/** Work from 08:00; the second day has room for all that the first has not. */
const dayOf = (index: number, darkAtMin: number): ProblemDay => ({
  date: `2026-08-${10 + index}`,
  startMin: index * DAY_MIN,
  endMin: (index + 1) * DAY_MIN,
  sunriseMin: index * DAY_MIN + 300,
  darkMin: index * DAY_MIN + darkAtMin,
})

const MORNING_MIN = 480

const stepsOf = (
  draw: Draw,
  chain: readonly Operation[],
  machines: readonly ProblemMachine[],
): ProblemStep[] =>
  chain.map((operation, index): ProblemStep => ({
    operation,
    pass: 1,
    load: operation === 'dress' ? 1 : null,
    minutesByMachine: new Map(
      machines
        .filter((machine) => machine.operations.includes(operation))
        .map((machine) => [machine.id, ticks(draw, 1, 3)]),
    ),
    effects: [
      ...(index === 0 ? (['opens'] as const) : []),
      ...(index === Math.min(1, chain.length - 2) ? (['clears'] as const) : []),
      ...(index === chain.indexOf('water') - 1 || (index === chain.length - 1 && operation !== 'water')
        ? (['finishes'] as const)
        : []),
    ],
    sandT: operation === 'dress' ? 0.5 : 0,
    lagMin: index > 0 && draw.chance(25) ? TICK_MIN : 0,
    nextDay: false,
    dryNeedMm: operation === 'dragIn' ? 0.1 : 0,
  }))

const machinesOf = (draw: Draw, chain: readonly Operation[], wayMin: Int32Array): ProblemMachine[] =>
  chain.flatMap((operation) =>
    Array.from({ length: draw.chance(20) && operation !== 'dress' ? 2 : 1 }, (_, number): ProblemMachine => ({
      id: `${operation}-${number + 1}`,
      kind: KIND[operation as keyof typeof KIND],
      operations: [operation],
      crew: draw.chance(20) ? 2 : 1,
      setUpMin: draw.chance(30) ? TICK_MIN : 0,
      hopperT: operation === 'dress' ? 1 : null,
      loadMin: operation === 'dress' ? TICK_MIN : 0,
      available: [{ start: 0, end: DAYS * DAY_MIN }],
      travelMin: wayMin,
    })),
  )

const peopleOf = (draw: Draw, chain: readonly Operation[], count: number): ProblemPerson[] =>
  Array.from({ length: count }, (_, index): ProblemPerson => {
    const shiftMin = ticks(draw, 8, 18)
    const shifts = Array.from({ length: DAYS }, (__, day): Span => {
      const start = day * DAY_MIN + MORNING_MIN + (index > 1 ? ticks(draw, 0, 3) : 0)
      return { start, end: start + shiftMin }
    })
    return {
      id: `person-${index + 1}`,
      // Two can do everything, so that a crew of two is never lacking.
      skills: new Set(index < 2 ? chain : draw.some(chain, 50)),
      shifts,
      ordinaryEndMin: shifts.map(({ end }) => end),
      breaks: draw.chance(30)
        ? shifts.map(({ start }) => ({ window: { start: start + 15, end: start + 45 }, minutes: 10 }))
        : [],
    }
  })

const waysOf = (draw: Draw, places: number): Int32Array => {
  const wayMin = new Int32Array(places * places)
  const far = draw.chance(50) ? 1 : 0
  for (let from = 0; from < places; from++)
    for (let to = 0; to < from; to++) {
      const way = far * TICK_MIN * draw.whole(1, 2)
      wayMin[from * places + to] = way
      wayMin[to * places + from] = way
    }
  return wayMin
}

/** A problem of two or three greens, made up from a seed, small enough that every plan on the grid can be tried. */
export const tinyProblem = (seed: number): Problem => {
  const draw = drawFrom(seed)
  // Without ways all is at the shed: then no moves are needed, and longer chains can be tried.
  const apart = seed % 2 === 0
  const chain = draw.one(apart ? CHAINS.filter(({ length }) => length === 2) : CHAINS)
  const greens = chain.length > 2 || apart ? 2 : draw.whole(2, 3)
  const places = apart ? ['shed', 'bay', ...Array.from({ length: greens }, (_, i) => `g${i + 1}`)] : ['shed']
  const wayMin = waysOf(draw, places.length)
  const machines = machinesOf(draw, chain, wayMin)
  const rain = draw.chance(30)
    ? [{ start: MORNING_MIN + ticks(draw, 3, 10), end: MORNING_MIN + 120 + ticks(draw, 0, 6) }]
    : []
  const days = Array.from({ length: DAYS }, (_, index) => dayOf(index, MORNING_MIN + ticks(draw, 12, 40)))
  const light = days.map(({ startMin, darkMin }) => ({ start: startMin + 420, end: darkMin }))
  const late = draw.chance(30) ? ticks(draw, 1, 4) : 0
  return {
    originMs: Date.UTC(2026, 7, 10),
    timeZone: 'UTC',
    days,
    horizonMin: DAYS * DAY_MIN,
    places,
    personTravelMin: wayMin,
    machines,
    people: peopleOf(draw, chain, apart ? 2 : draw.whole(2, 3)),
    greens: Array.from({ length: greens }, (_, index): ProblemGreen => ({
      id: `g${index + 1}`,
      place: apart ? index + 2 : 0,
      weak: index === 0 && draw.chance(20),
      steps: stepsOf(draw, chain, machines),
      sand: { kind: 'damp', lowT: 0.5, likelyT: 0.5, highT: 0.5, loads: chain.includes('dress') ? 1 : 0 },
      fixtures: [],
    })),
    excluded: [],
    stores: [
      {
        kind: 'damp',
        place: apart ? 1 : 0,
        stockT: draw.chance(20) ? 0.5 : 5,
        deliveries: [{ atMin: MORNING_MIN + 60, massT: 5 }],
      },
    ],
    rain,
    workable: new Map(
      chain.map((operation, index) => [
        operation,
        subtractSpans(
          light,
          [
            ...rain,
            ...(index === 0
              ? []
              : days.map(({ startMin }) => ({ start: startMin, end: startMin + MORNING_MIN + late }))),
          ].toSorted((a, b) => a.start - b.start),
        ),
      ]),
    ),
    driedMm: Float64Array.from({ length: DAYS * 24 + 1 }, (_, hour) => hour * 1.2),
    settings: {
      rainStopMmPerH: 0.2,
      darkFrom: null,
      mayStandDryNight: false,
      openGreensCap: draw.whole(1, 3),
      firstGreenCheckMin: draw.chance(50) ? TICK_MIN : 0,
      packUpMin: 0,
      detourFactor: 1,
      personTravelMPerS: 4,
      deepFromMm: 100,
      weather: {},
    },
    assumed: [],
  }
}
