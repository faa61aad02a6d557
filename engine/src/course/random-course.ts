import { OPERATIONS, type MachineKind, type Operation } from '../planning/operations.ts'
import type { Prescription } from '../planning/prescription.ts'
import type { WeatherHours } from '../weather/hours.ts'
import type { Course, Fixture, Green, Machine, Person, Place, SandStore, Settings } from './course.ts'
import { drawFrom, type Draw } from './draw.ts'
import { planeAtPosition, toPosition } from './outline.ts'
import { randomGreens } from './random-greens.ts'
import { randomPrescription } from './random-prescription.ts'
import { randomWeather } from './random-weather.ts'
import { METRIC_UNITS, TYPICAL_MACHINES } from './typical.ts'
import { dayOfYear } from '../time/calendar.ts'
import { addDays, instantOf } from '../time/zone.ts'

/** What a random course is asked to be. */
export type RandomWish = {
  readonly seed: number
  /** How many greens, 1 to 36. */
  readonly greens: number
  /** Days of weather from the first day of work; 7 when not said. */
  readonly days?: number
  /** `dry`: no rain at all and sun enough; `mixed`: showers and wet days as they come; `wet`: most days have rain. */
  readonly weather?: 'dry' | 'mixed' | 'wet'
  /** `enough`: sand never stops the work; `short`: it may. Drawn when not said. */
  readonly sand?: 'enough' | 'short'
}

/** A problem made up for tests and benchmarks: nothing in it is real, everything in it is in range. */
export type RandomCourse = {
  readonly course: Course
  readonly prescription: Prescription
  readonly weather: WeatherHours
  /** First day of work, local. */
  readonly start: string
}

const TIME_ZONE = 'Europe/London'

/** Kinds that every chain of `randomPrescription` may need, how many at most. */
const SHED: readonly (readonly [MachineKind, number])[] = [
  ['corer', 2],
  ['scarifier', 2],
  ['collector', 1],
  ['brush', 1],
  ['blower', 2],
  ['mower', 2],
  ['dresser', 2],
  ['dragMat', 1],
  ['roller', 1],
]

const randomMachine = (draw: Draw, kind: MachineKind, number: number): Machine => {
  const { title, strokesPerMin, ...typical } = TYPICAL_MACHINES[kind]
  const about = (value: number): number => draw.stepped(value * 0.8, value * 1.25, value / 20)
  return {
    ...typical,
    ...(strokesPerMin === undefined || draw.chance(50) ? {} : { strokesPerMin }),
    id: `${kind}-${number}`,
    name: `${title} ${number}`,
    kind,
    speedMPerS: about(typical.speedMPerS),
    turnS: draw.whole(2, 20),
    perGreenMin: draw.stepped(0, 6, 0.5),
    travelMPerS: draw.stepped(1.5, 5, 0.5),
    setUpMin: draw.whole(0, 4) * 5,
    crew: kind === 'collector' ? draw.whole(1, 2) : 1,
    ...(kind === 'dresser' ? { hopperT: draw.stepped(0.6, 1.5, 0.1), loadMin: draw.whole(2, 8) } : {}),
  }
}

const randomMachines = (draw: Draw): Machine[] =>
  SHED.flatMap(([kind, most]) =>
    Array.from({ length: draw.whole(1, most) }, (_, i) => randomMachine(draw, kind, i + 1)),
  )

/** Two people can do everything, so that no operation lacks its crew; the others know some of it. */
const randomPeople = (draw: Draw, start: string): Person[] =>
  Array.from({ length: draw.whole(3, 8) }, (_, i): Person => {
    const from = draw.one(['05:30', '06:00', '06:30', '07:00'])
    const some = draw.some(OPERATIONS, 45)
    const skills: Operation[] = i < 2 ? [...OPERATIONS] : some.length === 0 ? ['blow'] : some
    return {
      id: `person-${i + 1}`,
      name: `Person ${i + 1}`,
      skills,
      shift: { from, to: draw.one(['13:30', '14:30', '15:00', '15:30', '16:30']) },
      overtimeMin: draw.whole(0, 4) * 30,
      breaks: [
        ...(draw.chance(60) ? [{ earliest: '09:00', latest: '10:45', minutes: draw.one([15, 20, 30]) }] : []),
        ...(draw.chance(80) ? [{ earliest: '11:45', latest: '13:30', minutes: draw.one([20, 30, 45]) }] : []),
      ],
      courseSetUpUntil: i > 0 && draw.chance(25) ? draw.one(['08:00', '08:30', '09:00']) : null,
      ...(i > 1 && draw.chance(10) ? { awayOn: [addDays(start, 1)] } : {}),
    }
  })

type StoreWish = { readonly start: string; readonly greensM2: number; readonly sand: 'enough' | 'short' }

/** `enough` is 15 kg a square metre, above all that the chains ask for; `short` is a fifth of that and a lorry on the third day. */
const randomStores = (draw: Draw, { start, greensM2, sand }: StoreWish): SandStore[] =>
  (['damp', 'kilnDried'] as const).map((kind): SandStore => {
    const enoughT = Math.ceil((greensM2 * 15) / 1000) + 2
    const stockT = sand === 'enough' ? enoughT : Math.ceil(enoughT / draw.whole(4, 8))
    const delivery = { date: addDays(start, 2), time: draw.one(['08:00', '10:30', '13:00']), massT: 20 }
    return {
      id: `${kind}-sand`,
      place: 'sand-bay',
      kind,
      stockT,
      capacityT: enoughT + 40,
      lorryT: 20,
      deliveries: sand === 'short' && draw.chance(70) ? [delivery] : [],
    }
  })

const randomFixtures = (draw: Draw, start: string, greens: readonly Green[]): Fixture[] =>
  Array.from({ length: draw.whole(0, 2) }, (_, i): Fixture => {
    const named = draw.some(greens, 50).map(({ id }) => id)
    return {
      id: `fixture-${i + 1}`,
      name: `Fixture ${i + 1}`,
      date: addDays(start, draw.whole(1, 6)),
      from: draw.one(['08:00', '09:00', '13:00']),
      to: draw.one(['14:00', '18:00']),
      greens: named.length === 0 || draw.chance(50) ? 'all' : named,
    }
  })

const randomSettings = (draw: Draw): Settings => ({
  rainStopMmPerH: 0.2,
  darkFrom: draw.chance(15) ? '19:00' : null,
  mayStandDryNight: draw.chance(20),
  openGreensCap: draw.whole(2, 6),
  firstGreenCheckMin: draw.whole(0, 2) * 10,
  packUpMin: draw.whole(0, 3) * 10,
  detourFactor: draw.stepped(1.1, 1.8, 0.1),
  personTravelMPerS: draw.stepped(1.5, 5, 0.5),
  deepFromMm: 100,
  weather: {},
})

/**
 * A made-up course with crew, machines, sand and fixtures, a prescription for it and a week's weather, all from one seed.
 * The same wish gives the same problem everywhere. Every part passes the checks of the course and prescription files.
 */
export const randomCourse = (wish: RandomWish): RandomCourse => {
  const draw = drawFrom(wish.seed)
  const start = addDays('2026-05-04', draw.whole(0, 150))
  const at: [number, number] = [draw.stepped(-6, 1, 0.01), draw.stepped(50.5, 57.5, 0.01)]
  const plane = planeAtPosition(at)
  const greens = randomGreens(draw, plane, wish.greens)
  const bay = toPosition(plane, { x: draw.whole(-60, 60), y: draw.whole(-60, 60) })
  const places: Place[] = [
    { id: 'shed', name: 'Shed', kind: 'shed', at },
    { id: 'sand-bay', name: 'Sand bay', kind: 'sandBay', at: [...bay] },
  ]
  const greensM2 = greens.reduce((sum, { areaM2 }) => sum + areaM2, 0)
  const sand = wish.sand ?? (draw.chance(75) ? 'enough' : 'short')
  const course: Course = {
    version: 1,
    id: `random-${Math.abs(wish.seed)}`,
    name: `Random ${wish.seed}`,
    timeZone: TIME_ZONE,
    altitudeM: draw.whole(0, 300),
    now: null,
    greens,
    places,
    machines: randomMachines(draw),
    people: randomPeople(draw, start),
    stores: randomStores(draw, { start, greensM2, sand }),
    fixtures: randomFixtures(draw, start, greens),
    settings: randomSettings(draw),
    units: METRIC_UNITS,
  }
  const prescription = randomPrescription(draw, greens)
  const weather = randomWeather(draw, {
    startMs: instantOf(start, 0, TIME_ZONE),
    days: wish.days ?? 7,
    kind: wish.weather ?? 'mixed',
    latitudeDeg: at[1],
    dayOfYear: dayOfYear(start),
  })
  return { course, prescription, weather, start }
}
