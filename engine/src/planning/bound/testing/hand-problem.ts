import type { Operation } from '../../operations.ts'
import type { Problem, ProblemMachine, ProblemPerson, ProblemStep, Span } from '../../problem.ts'

/** What a problem worked by hand differs in from the plainest one. Minutes. */
export type HandWish = {
  /** By green: minutes of each step of the chain. */
  readonly minutes: readonly (readonly number[])[]
  readonly chain: readonly Operation[]
  /** Machines of each step's kind. */
  readonly machines: readonly number[]
  readonly people: number
  readonly shift?: Span
  readonly setUpMin?: number
  /** Way from the shed to any green, and between greens; without it all are at the shed. */
  readonly ways?: { readonly shed: number; readonly greens: number }
  readonly rain?: readonly Span[]
  readonly cap?: number
  readonly stockT?: number
  readonly deliveries?: Problem['stores'][number]['deliveries']
  readonly breaks?: ProblemPerson['breaks']
}

const DAY_MIN = 1440
const DAYS = 2
const KINDS: Partial<Record<Operation, ProblemMachine['kind']>> = {
  core: 'corer',
  dress: 'dresser',
  dragIn: 'dragMat',
  roll: 'roller',
}

const eachDay = ({ start, end }: Span): readonly Span[] =>
  Array.from({ length: DAYS }, (_, day) => ({ start: day * DAY_MIN + start, end: day * DAY_MIN + end }))

const waysOf = (wish: HandWish): Int32Array => {
  if (wish.ways === undefined) return new Int32Array(1)
  const places = wish.minutes.length + 1
  return Int32Array.from({ length: places * places }, (_, index) => {
    const [from, to] = [Math.floor(index / places), index % places]
    if (from === to) return 0
    return from === 0 || to === 0 ? (wish.ways?.shed ?? 0) : (wish.ways?.greens ?? 0)
  })
}

const machinesOf = (wish: HandWish, travelMin: Int32Array): readonly ProblemMachine[] =>
  wish.chain.flatMap((operation, step) =>
    Array.from({ length: wish.machines[step] ?? 1 }, (_, number): ProblemMachine => ({
      id: `${operation}-${number + 1}`,
      kind: KINDS[operation] ?? 'roller',
      operations: [operation],
      crew: 1,
      setUpMin: wish.setUpMin ?? 0,
      hopperT: operation === 'dress' ? 1 : null,
      loadMin: 0,
      available: [{ start: 0, end: DAYS * DAY_MIN }],
      travelMin,
    })),
  )

const stepsOf = (
  wish: HandWish,
  green: number,
  machines: readonly ProblemMachine[],
): readonly ProblemStep[] =>
  wish.chain.map((operation, index): ProblemStep => ({
    operation,
    pass: 1,
    load: operation === 'dress' ? 1 : null,
    minutesByMachine: new Map(
      machines
        .filter((machine) => machine.operations.includes(operation))
        .map(({ id }) => [id, wish.minutes[green]?.[index] ?? 0]),
    ),
    effects: [
      ...(index === 0 ? (['opens', 'clears'] as const) : []),
      ...(index === wish.chain.length - 1 ? (['finishes'] as const) : []),
    ],
    sandT: operation === 'dress' ? 1 : 0,
    lagMin: 0,
    nextDay: false,
    dryNeedMm: 0,
  }))

/** A problem of two days, light from 05:00 to 21:00, everybody trained for everything, sand that need not dry. */
export const handProblem = (wish: HandWish): Problem => {
  const travelMin = waysOf(wish)
  const machines = machinesOf(wish, travelMin)
  const shifts = eachDay(wish.shift ?? { start: 480, end: 960 })
  const rain = wish.rain ?? []
  const people = Array.from({ length: wish.people }, (_, index): ProblemPerson => ({
    id: `person-${index + 1}`,
    skills: new Set(wish.chain),
    shifts,
    ordinaryEndMin: shifts.map(({ end }) => end),
    breaks: wish.breaks ?? [],
  }))
  return {
    originMs: Date.UTC(2026, 7, 10),
    timeZone: 'UTC',
    days: Array.from({ length: DAYS }, (_, day) => ({
      date: `2026-08-${10 + day}`,
      startMin: day * DAY_MIN,
      endMin: (day + 1) * DAY_MIN,
      sunriseMin: day * DAY_MIN + 300,
      darkMin: day * DAY_MIN + 1260,
    })),
    horizonMin: DAYS * DAY_MIN,
    places: wish.ways === undefined ? ['shed'] : ['shed', ...wish.minutes.map((_, index) => `g${index + 1}`)],
    personTravelMin: travelMin,
    machines,
    people,
    greens: wish.minutes.map((_, index) => ({
      id: `g${index + 1}`,
      place: wish.ways === undefined ? 0 : index + 1,
      weak: false,
      steps: stepsOf(wish, index, machines),
      sand: { kind: 'damp', lowT: 1, likelyT: 1, highT: 1, loads: wish.chain.includes('dress') ? 1 : 0 },
      fixtures: [],
    })),
    excluded: [],
    stores: [{ kind: 'damp', place: 0, stockT: wish.stockT ?? 100, deliveries: wish.deliveries ?? [] }],
    rain,
    workable: new Map(wish.chain.map((operation) => [operation, eachDay({ start: 300, end: 1260 })])),
    driedMm: new Float64Array(DAYS * 24 + 1),
    settings: {
      rainStopMmPerH: 0.2,
      darkFrom: null,
      mayStandDryNight: false,
      openGreensCap: wish.cap ?? 10,
      firstGreenCheckMin: 0,
      packUpMin: 0,
      detourFactor: 1,
      personTravelMPerS: 4,
      deepFromMm: 100,
      weather: {},
    },
    assumed: [],
  }
}
