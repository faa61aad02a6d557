import type { Settings } from '../../course/course.ts'
import type { Effect, Operation } from '../operations.ts'
import type { Problem, ProblemGreen, ProblemMachine, ProblemPerson, ProblemStep, Span } from '../problem.ts'

/*
 * A course small enough to plan by hand, for the tests of the checker: greens `a` and `b` (and `p`, left out), a crew of three, five machines.
 * Every figure is invented and chosen so that the plan in `small-plan.ts` has no minute to spare where it can. Machines and people
 * take different times for one way, so that the one is never taken for the other.
 */

/** Places: 0 shed, 1 sand bay, 2 green a, 3 green b, 4 green p. */
const PLACES = ['shed', 'bay', 'a', 'b', 'p']

const ways = (minutes: { bay: number; green: number; bayGreen: number; greens: number }): Int32Array => {
  const { bay, green, bayGreen, greens } = minutes
  const rows = [
    [0, bay, green, green, green],
    [bay, 0, bayGreen, bayGreen, bayGreen],
    [green, bayGreen, 0, greens, greens],
    [green, bayGreen, greens, 0, greens],
    [green, bayGreen, greens, greens, 0],
  ]
  return Int32Array.from(rows.flat())
}

const MACHINE_WAYS = ways({ bay: 4, green: 6, bayGreen: 5, greens: 3 })
const PERSON_WAYS = ways({ bay: 2, green: 3, bayGreen: 3, greens: 2 })

/** Midnights from the origin, minutes: three days of 24 hours unless a test says otherwise. */
export type Midnights = readonly [number, number, number, number]

const eachDay = (midnights: Midnights, from: number, to: number): readonly Span[] =>
  midnights.slice(0, 3).map((midnight) => ({ start: midnight + from, end: midnight + to }))

const machine = (id: string, operation: Operation, more: Partial<ProblemMachine>): ProblemMachine => ({
  id,
  kind: 'corer',
  operations: [operation],
  crew: 1,
  setUpMin: 0,
  hopperT: null,
  loadMin: 0,
  available: [],
  travelMin: MACHINE_WAYS,
  ...more,
})

const machines = (midnights: Midnights): readonly ProblemMachine[] => {
  const available = eachDay(midnights, 360, 1140)
  return [
    machine('corer', 'core', { setUpMin: 15, available }),
    machine('collector', 'collect', { kind: 'collector', available }),
    machine('dresser', 'dress', { kind: 'dresser', setUpMin: 10, hopperT: 0.9, loadMin: 8, available }),
    machine('mat', 'dragIn', { kind: 'dragMat', crew: 2, available }),
    machine('roller', 'roll', { kind: 'roller', available }),
  ]
}

const person = (id: string, skills: readonly Operation[], midnights: Midnights): ProblemPerson => ({
  id,
  skills: new Set(skills),
  shifts: eachDay(midnights, 480, 960),
  // Ordinary time ends at 12:30 on every day.
  ordinaryEndMin: midnights.slice(0, 3).map((midnight) => midnight + 750),
  breaks: eachDay(midnights, 720, 840).map((window) => ({ window, minutes: 30 })),
})

const step = (operation: Operation, more: Partial<ProblemStep>): ProblemStep => ({
  operation,
  pass: 1,
  load: null,
  minutesByMachine: new Map(),
  effects: [],
  sandT: 0,
  lagMin: 0,
  nextDay: false,
  dryNeedMm: 0,
  ...more,
})

const on = (machineId: string, minutes: number, ...effects: readonly Effect[]): Partial<ProblemStep> => ({
  minutesByMachine: new Map([[machineId, minutes]]),
  effects,
})

const greenA: ProblemGreen = {
  id: 'a',
  place: 2,
  weak: false,
  steps: [
    step('core', on('corer', 30, 'opens')),
    step('collect', on('collector', 20, 'clears')),
    step('dress', { ...on('dresser', 10), load: 1, sandT: 0.9 }),
    step('dress', { ...on('dresser', 10, 'dresses'), load: 2, sandT: 0.6 }),
    step('dragIn', { ...on('mat', 15, 'finishes'), dryNeedMm: 0.5 }),
    step('roll', { ...on('roller', 10), lagMin: 10 }),
  ],
  sand: { kind: 'damp', lowT: 1.1, likelyT: 1.5, highT: 1.8, loads: 2 },
  fixtures: [{ start: 700, end: 800 }],
}

const greenB: ProblemGreen = {
  id: 'b',
  place: 3,
  weak: true,
  steps: [
    step('core', on('corer', 40, 'opens')),
    step('collect', on('collector', 25, 'clears')),
    step('dress', { ...on('dresser', 10, 'dresses'), load: 1, sandT: 0.8 }),
    step('dragIn', { ...on('mat', 15, 'finishes'), dryNeedMm: 0.5 }),
    step('roll', { ...on('roller', 10), lagMin: 10 }),
    // By hand, with no machine, on a later day.
    step('water', { nextDay: true }),
  ],
  sand: { kind: 'damp', lowT: 0.6, likelyT: 0.8, highT: 1, loads: 1 },
  fixtures: [],
}

const SETTINGS: Settings = {
  rainStopMmPerH: 0.2,
  darkFrom: null,
  mayStandDryNight: false,
  openGreensCap: 2,
  firstGreenCheckMin: 20,
  packUpMin: 0,
  detourFactor: 1.3,
  personTravelMPerS: 4,
  deepFromMm: 150,
  weather: {},
}

const OPERATIONS_USED: readonly Operation[] = ['core', 'collect', 'dress', 'dragIn', 'roll', 'water']

/** Sand dries by 0.3 mm an hour from 08:00 to 18:00 of the first day, so 0.5 mm take 100 minutes; nothing before or after. */
const dried = (hours: number): Float64Array =>
  Float64Array.from({ length: hours + 1 }, (_, hour) => 0.3 * Math.min(Math.max(hour - 8, 0), 10))

const DATES = ['2026-08-10', '2026-08-11', '2026-08-12']

/** The problem; `originMs` is the first local midnight, in London summer time (UTC+1) unless a test says otherwise. */
export const smallProblem = (
  midnights: Midnights = [0, 1440, 2880, 4320],
  originMs: number = Date.UTC(2026, 7, 9, 23),
  dates: readonly string[] = DATES,
): Problem => ({
  originMs,
  timeZone: 'Europe/London',
  days: midnights.slice(0, 3).map((startMin, index) => ({
    date: dates[index] ?? '',
    startMin,
    endMin: midnights[index + 1] ?? startMin,
    sunriseMin: startMin + 335,
    darkMin: startMin + 1230,
  })),
  horizonMin: midnights[3],
  places: PLACES,
  personTravelMin: PERSON_WAYS,
  machines: machines(midnights),
  people: [
    person('ann', ['core', 'roll'], midnights),
    person('bob', ['collect', 'dragIn'], midnights),
    person('cat', ['dress', 'dragIn', 'water'], midnights),
  ],
  greens: [greenA, greenB],
  excluded: [{ green: 'p', reason: 'notPrescribed', facts: {} }],
  // 0.9 + 0.6 t are loaded before the delivery, 0.8 t in the minute of it.
  stores: [{ kind: 'damp', place: 1, stockT: 1.5, deliveries: [{ atMin: 594, massT: 0.8 }] }],
  rain: [{ start: 900, end: 960 }],
  workable: new Map(OPERATIONS_USED.map((operation) => [operation, eachDay(midnights, 335, 900)])),
  driedMm: dried(Math.floor(midnights[3] / 60)),
  settings: SETTINGS,
  assumed: [],
})
