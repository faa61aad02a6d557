import type { MachineKind, Operation } from '../planning/operations.ts'
import { OPERATIONS } from '../planning/operations.ts'
import type { Machine, Person, Settings, UnitsWanted } from './course.ts'

/** What a machine of a kind is taken to be where the file does not say. */
export type TypicalMachine = Omit<Machine, 'id' | 'name' | 'kind'> & { readonly title: string }

/**
 * Machines as small clubs have them. Widths and paces are set so that a green of 450 to 500 m2 takes what the trade tells:
 * coring 25 to 27 min, one scarifying pass about 30, collecting 12 to 20, blowing 10, a cut 5 (triplex), dressing about 20,
 * dragging 3 to 4 a pass, rolling 5 (common practice, no source; no time study was found).
 */
export const TYPICAL_MACHINES: Readonly<Record<MachineKind, TypicalMachine>> = {
  corer: {
    title: 'Corer',
    widthM: 1.2,
    overlapM: 0,
    speedMPerS: 0.375,
    strokesPerMin: 450,
    turnS: 18,
    perGreenMin: 3,
    travelMPerS: 2.5,
    setUpMin: 20,
    crew: 1,
  },
  deepTiner: {
    title: 'Deep tiner',
    widthM: 1.6,
    overlapM: 0,
    speedMPerS: 0.3,
    turnS: 25,
    perGreenMin: 3,
    travelMPerS: 3.5,
    setUpMin: 25,
    crew: 1,
  },
  scarifier: {
    title: 'Scarifier',
    widthM: 0.48,
    overlapM: 0.02,
    speedMPerS: 0.85,
    turnS: 8,
    perGreenMin: 2,
    travelMPerS: 2.5,
    setUpMin: 10,
    crew: 1,
  },
  collector: {
    title: 'Core collector',
    widthM: 1.2,
    overlapM: 0.1,
    speedMPerS: 1,
    turnS: 8,
    perGreenMin: 6,
    travelMPerS: 3,
    setUpMin: 10,
    crew: 2,
  },
  brush: {
    title: 'Brush',
    widthM: 1.6,
    overlapM: 0.1,
    speedMPerS: 1.3,
    turnS: 6,
    perGreenMin: 1,
    travelMPerS: 4,
    setUpMin: 5,
    crew: 1,
  },
  blower: {
    title: 'Blower',
    widthM: 2.5,
    overlapM: 0.3,
    speedMPerS: 0.8,
    turnS: 8,
    perGreenMin: 3,
    travelMPerS: 4,
    setUpMin: 5,
    crew: 1,
  },
  mower: {
    title: 'Mower',
    widthM: 1.5,
    overlapM: 0.1,
    speedMPerS: 1.7,
    turnS: 6,
    perGreenMin: 1,
    travelMPerS: 4,
    setUpMin: 10,
    crew: 1,
  },
  dresser: {
    title: 'Top-dresser',
    widthM: 1.5,
    overlapM: 0,
    speedMPerS: 0.6,
    turnS: 12,
    perGreenMin: 3,
    travelMPerS: 3.5,
    setUpMin: 10,
    crew: 1,
    hopperT: 0.9,
    loadMin: 4,
  },
  dragMat: {
    title: 'Drag mat',
    widthM: 1.8,
    overlapM: 0.3,
    speedMPerS: 2,
    turnS: 4,
    perGreenMin: 0.5,
    travelMPerS: 4,
    setUpMin: 5,
    crew: 1,
  },
  roller: {
    title: 'Roller',
    widthM: 1.2,
    overlapM: 0.1,
    speedMPerS: 2.2,
    turnS: 4,
    perGreenMin: 0.5,
    travelMPerS: 3,
    setUpMin: 5,
    crew: 1,
  },
  seeder: {
    title: 'Seeder',
    widthM: 1.2,
    overlapM: 0.05,
    speedMPerS: 0.8,
    turnS: 10,
    perGreenMin: 2,
    travelMPerS: 3,
    setUpMin: 10,
    crew: 1,
  },
  spreader: {
    title: 'Spreader',
    widthM: 3,
    overlapM: 0.5,
    speedMPerS: 1.2,
    turnS: 4,
    perGreenMin: 1,
    travelMPerS: 3,
    setUpMin: 10,
    crew: 1,
  },
  sprayer: {
    title: 'Sprayer',
    widthM: 4.5,
    overlapM: 0.3,
    speedMPerS: 1.2,
    turnS: 10,
    perGreenMin: 1,
    travelMPerS: 4,
    setUpMin: 20,
    crew: 1,
  },
  hose: {
    title: 'Hose',
    widthM: 2,
    overlapM: 0.2,
    speedMPerS: 0.6,
    turnS: 2,
    perGreenMin: 3,
    travelMPerS: 3,
    setUpMin: 0,
    crew: 1,
  },
}

/** The shed that a club is taken to have when the file names no machine: one of each that the usual chain needs, two mowers. */
export const TYPICAL_SHED: readonly MachineKind[] = [
  'corer',
  'scarifier',
  'collector',
  'brush',
  'blower',
  'mower',
  'mower',
  'dresser',
  'dragMat',
  'roller',
]

/** What a person is taken to be where the file does not say: trained for all, an early shift with two breaks. */
export const TYPICAL_PERSON: Omit<Person, 'id' | 'name'> = {
  skills: [...OPERATIONS],
  shift: { from: '06:00', to: '14:30' },
  overtimeMin: 120,
  breaks: [
    { earliest: '09:00', latest: '10:45', minutes: 20 },
    { earliest: '12:00', latest: '14:00', minutes: 30 },
  ],
  courseSetUpUntil: null,
}

/** Skills of a typical crew of six by post: two who core, three who scarify, hands for the rest; the last two set the course up until nine. */
export const TYPICAL_CREW: readonly {
  readonly name: string
  readonly skills: readonly Operation[]
  readonly setsUp: boolean
}[] = [
  { name: 'Manager', skills: ['core', 'solidTine', 'feed', 'cut', 'dress', 'roll', 'water'], setsUp: false },
  { name: 'Deputy', skills: ['core', 'solidTine', 'scarify', 'dress', 'feed', 'seed'], setsUp: false },
  { name: 'Keeper 1', skills: ['scarify', 'collect', 'brushIn', 'blow', 'dragIn'], setsUp: false },
  { name: 'Keeper 2', skills: ['scarify', 'collect', 'blow', 'cut', 'roll'], setsUp: false },
  { name: 'Keeper 3', skills: ['collect', 'brushIn', 'cut', 'dress', 'dragIn', 'seed'], setsUp: true },
  { name: 'Keeper 4', skills: ['collect', 'brushIn', 'blow', 'dragIn', 'roll', 'water'], setsUp: true },
]

/** When the morning's course set-up ends (trade: one and a half to two people until about nine). */
export const TYPICAL_SET_UP_UNTIL = '09:00'

/** The club's choices where it has made none. */
export const TYPICAL_SETTINGS: Settings = {
  rainStopMmPerH: 0.2,
  darkFrom: null,
  mayStandDryNight: false,
  openGreensCap: 4,
  firstGreenCheckMin: 15,
  packUpMin: 20,
  detourFactor: 1.3,
  personTravelMPerS: 3,
  deepFromMm: 100,
  weather: {},
}

/** Units where the club has named none. */
export const METRIC_UNITS: UnitsWanted = {
  tine: 'mm',
  depth: 'mm',
  sand: 't',
  area: 'm2',
  distance: 'm',
  temperature: 'C',
  rain: 'mm',
}

/** A green of which only the area is known: nothing is claimed for it, and services count as not looked for. */
export const TYPICAL_GREEN = {
  rootzone: { kind: 'sand', goodDepthMm: 150 },
  drainage: 'moderate',
  shade: 'open',
  weak: false,
  organicTests: [],
  services: [],
  servicesChecked: false,
} as const

/** Sand that a bay is taken to hold when no store is named, kg dry a square metre of green: above any usual dressing, so that it never stops a first plan. */
export const TYPICAL_STOCK_KG_PER_M2 = 12

/** One lorry of sand, t, where none is stated (common practice: 20 t tippers; kiln-dried comes by the pallet). */
export const TYPICAL_LORRY_T = { damp: 20, kilnDried: 5 } as const
