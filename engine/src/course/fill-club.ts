import { assumedFact } from './assumed.ts'
import type { Course, Fixture, Machine, Person, Place, SandStore, Settings, UnitsWanted } from './course.ts'
import type { ClubMember, MachineInFile, PersonInFile, StoreInFile, TinesInFile } from './course-file.ts'
import { freeId, slugOf } from './slug.ts'
import {
  METRIC_UNITS,
  TYPICAL_CREW,
  TYPICAL_LORRY_T,
  TYPICAL_MACHINES,
  TYPICAL_PERSON,
  TYPICAL_SET_UP_UNTIL,
  TYPICAL_SETTINGS,
  TYPICAL_SHED,
  TYPICAL_STOCK_KG_PER_M2,
} from './typical.ts'

/** A filled part of a course and what was taken for granted in it. */
export type Filled<T> = { readonly value: T; readonly assumed: readonly string[] }

const collected = <T>(parts: readonly Filled<T>[]): Filled<T[]> => ({
  value: parts.map((part) => part.value),
  assumed: parts.flatMap((part) => part.assumed),
})

/** Gives each entry an id: its own, else one made of `wanted`, free among all. */
const withIds = <T extends { readonly id?: string | undefined }>(
  entries: readonly T[],
  wanted: (entry: T) => string,
): readonly (T & { readonly id: string })[] => {
  const taken = new Set(entries.flatMap(({ id }) => (id === undefined ? [] : [id])))
  return entries.map((entry) => {
    if (entry.id !== undefined) return { ...entry, id: entry.id }
    const id = freeId(wanted(entry), taken)
    taken.add(id)
    return { ...entry, id }
  })
}

const MACHINE_FIELDS = [
  'widthM',
  'overlapM',
  'speedMPerS',
  'turnS',
  'perGreenMin',
  'travelMPerS',
  'setUpMin',
  'crew',
] as const

/** Without the fields that are not said, so that they don't hide what is typical. */
const said = <T extends object>(entry: T): T => {
  const known = Object.entries(entry).filter(([, value]) => value !== undefined)
  return Object.fromEntries(known) as T
}

const filledMachine = (given: MachineInFile & { readonly id: string }): Filled<Machine> => {
  const { title, strokesPerMin, hopperT, loadMin, ...typical } = TYPICAL_MACHINES[given.kind]
  const widthM = given.widthM ?? typical.widthM
  const hasOwnPace = given.speedMPerS !== undefined || given.strokesPerMin !== undefined
  const optional = {
    ...(strokesPerMin === undefined || hasOwnPace ? {} : { strokesPerMin }),
    ...(hopperT === undefined ? {} : { hopperT }),
    ...(loadMin === undefined ? {} : { loadMin }),
  }
  const filled = { ...typical, overlapM: Math.min(typical.overlapM, widthM / 10), ...optional }
  const taken = [...MACHINE_FIELDS, ...Object.keys(optional)].filter(
    (field) => Reflect.get(given, field) === undefined,
  )
  return {
    value: { name: title, ...filled, ...said(given) } as Machine,
    assumed: taken.length === 0 ? [] : [assumedFact('machine.typical', given.id, taken.join(','))],
  }
}

/** The machines of the file, or a typical shed. */
export const filledMachines = (given: readonly MachineInFile[] | undefined): Filled<Machine[]> => {
  const machines = withIds<MachineInFile>(
    given ?? TYPICAL_SHED.map((kind) => ({ kind })),
    (machine) => machine.kind,
  )
  const filled = collected(machines.map(filledMachine))
  return given === undefined ? { value: filled.value, assumed: [assumedFact('machines.typical')] } : filled
}

const filledPerson = (given: PersonInFile & { readonly id: string }): Filled<Person> => {
  const taken = Object.keys(TYPICAL_PERSON).filter((field) => Reflect.get(given, field) === undefined)
  return {
    value: { ...TYPICAL_PERSON, ...said(given) } as Person,
    assumed: taken.length === 0 ? [] : [assumedFact('person.typical', given.id, taken.join(','))],
  }
}

const typicalCrew = (): readonly PersonInFile[] =>
  TYPICAL_CREW.map(({ name, skills, setsUp }) => ({
    ...TYPICAL_PERSON,
    name,
    skills: [...skills],
    courseSetUpUntil: setsUp ? TYPICAL_SET_UP_UNTIL : null,
  }))

/** The people of the file, or a typical crew of six. */
export const filledPeople = (given: readonly PersonInFile[] | undefined): Filled<Person[]> => {
  const people = withIds<PersonInFile>(given ?? typicalCrew(), (person) => slugOf(person.name, 'person'))
  const filled = collected(people.map(filledPerson))
  return given === undefined
    ? { value: filled.value, assumed: [assumedFact('people.typical', filled.value.length)] }
    : filled
}

const filledStore = (given: StoreInFile & { readonly id: string }, bay: string): Filled<SandStore> => {
  const lorryT = given.lorryT ?? TYPICAL_LORRY_T[given.kind]
  const deliveries = given.deliveries ?? []
  const typical = { place: bay, lorryT, deliveries, capacityT: given.stockT + lorryT }
  const taken = Object.keys(typical).filter((field) => Reflect.get(given, field) === undefined)
  return {
    value: { ...typical, ...said(given) } as SandStore,
    assumed: taken.length === 0 ? [] : [assumedFact('store.typical', given.id, taken.join(','))],
  }
}

/** The sand of the file, or of both kinds more than the greens can take, so that a first plan does not stop for sand. */
export const filledStores = (
  given: readonly StoreInFile[] | undefined,
  ground: { readonly bay: string; readonly greensM2: number },
): Filled<SandStore[]> => {
  const enoughT = Math.ceil((ground.greensM2 * TYPICAL_STOCK_KG_PER_M2) / 1000)
  const both = (['damp', 'kilnDried'] as const).map((kind) => ({ kind, stockT: enoughT }))
  const stores = withIds<StoreInFile>(given ?? both, (store) => `${store.kind}-sand`)
  const filled = collected(stores.map((store) => filledStore(store, ground.bay)))
  return given === undefined
    ? { value: filled.value, assumed: [assumedFact('stores.typical', enoughT)] }
    : filled
}

/** The tine sets of the file with ids; absent where the club keeps no count of them. */
export const filledTineSets = (given: readonly TinesInFile[] | undefined): Course['tineSets'] =>
  given === undefined
    ? undefined
    : withIds<TinesInFile>(given, (one) =>
        slugOf(`tines ${one.holeDiameterMm} ${one.coreDiameterMm}`, 'tines'),
      ).map((one) => ({ ...one, deliveries: one.deliveries ?? [] }))

/** Fixtures with ids; none when none are told. */
export const filledFixtures = (given: ClubMember['fixtures']): Filled<Fixture[]> => {
  if (given === undefined) return { value: [], assumed: [assumedFact('fixtures.none')] }
  return { value: [...withIds(given, (fixture) => slugOf(fixture.name, 'fixture'))], assumed: [] }
}

/** The club's choices, the usual ones where it has made none. */
export const filledSettings = (given: ClubMember['settings']): Filled<Settings> => {
  const taken = Object.keys(TYPICAL_SETTINGS).filter((field) => Reflect.get(given ?? {}, field) === undefined)
  const told = taken.filter((field) => field !== 'weather')
  return {
    value: { ...TYPICAL_SETTINGS, ...said(given ?? {}) } as Settings,
    assumed: told.length === 0 ? [] : [assumedFact('settings.typical', told.join(','))],
  }
}

/** Units wanted, metric where nothing is said. */
export const filledUnits = (given: ClubMember['units']): Filled<UnitsWanted> => {
  const taken = Object.keys(METRIC_UNITS).filter((field) => Reflect.get(given ?? {}, field) === undefined)
  return {
    value: { ...METRIC_UNITS, ...said(given ?? {}) } as UnitsWanted,
    assumed: taken.length === 0 ? [] : [assumedFact('units.metric', taken.join(','))],
  }
}

/** The places of the file, with a shed in the middle of the greens and a sand bay at the shed where none is drawn. */
export const filledPlaces = (
  given: readonly Place[],
  middle: readonly [number, number],
): Filled<Place[]> & { readonly bay: string } => {
  const ids = new Set(given.map(({ id }) => id))
  const shed = given.find(({ kind }) => kind === 'shed')
  const bay = given.find(({ kind }) => kind === 'sandBay')
  const at: [number, number] = shed === undefined ? [...middle] : [...shed.at]
  const newShed: Place = { id: freeId('shed', ids), name: 'Shed', kind: 'shed', at }
  const newBay: Place = { id: freeId('sand-bay', ids), name: 'Sand bay', kind: 'sandBay', at }
  return {
    value: [...given, ...(shed === undefined ? [newShed] : []), ...(bay === undefined ? [newBay] : [])],
    assumed: [
      ...(shed === undefined ? [assumedFact('place.shed', newShed.id)] : []),
      ...(bay === undefined ? [assumedFact('place.sandBay', newBay.id)] : []),
    ],
    bay: (bay ?? newBay).id,
  }
}
