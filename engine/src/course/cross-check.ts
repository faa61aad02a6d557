import { isTimeZone } from '../time/zone.ts'
import type { Course, Green } from './course.ts'
import type { CourseError, CourseThing, CourseWhere } from './course-error.ts'
import { planeAtPosition, toLocal } from './outline.ts'

/** Greens farther apart than this are not one course: swapped coordinates or a slip, km. */
const MAX_APART_KM = 20

const inClub = (name: string | null, path: string): CourseWhere => ({
  feature: null,
  name,
  path: `swardwright.${path}`,
})

const twoOfOneId = (
  what: CourseThing,
  things: readonly { readonly id: string }[],
): CourseError | undefined => {
  const seen = new Set<string>()
  for (const { id } of things) {
    if (seen.has(id)) return { type: 'twoOfOneId', what, id }
    seen.add(id)
  }
  return undefined
}

/** Names that differ only in capitals or blanks are one name to whoever shouts it over a field. */
const twoOfOneName = (greens: readonly Green[]): CourseError | undefined => {
  const idByName = new Map<string, string>()
  for (const { id, name } of greens) {
    const spoken = name.toLowerCase().replace(/\s+/gu, ' ')
    const other = idByName.get(spoken)
    if (other !== undefined) return { type: 'twoOfOneName', name, ids: [other, id] }
    idByName.set(spoken, id)
  }
  return undefined
}

type Order = {
  readonly where: CourseWhere
  readonly field: string
  readonly value: string | number
  readonly limitField: string
  readonly limit: string | number
}

const notBelow = (orders: readonly Order[]): CourseError | undefined => {
  const broken = orders.find(({ value, limit }) => !(value < limit))
  if (broken === undefined) return undefined
  const { where, field, value, limitField, limit } = broken
  return { type: 'notBelow', where, field, received: String(value), limitField, limit: String(limit) }
}

const greenOrders = (greens: readonly Green[]): readonly Order[] =>
  greens.flatMap((green) =>
    green.organicTests.flatMap((test, t) =>
      test.layers.map((layer, l) => ({
        where: { feature: null, name: green.name, path: `organicTests[${t}].layers[${l}]` },
        field: 'fromMm',
        value: layer.fromMm,
        limitField: 'toMm',
        limit: layer.toMm,
      })),
    ),
  )

const clubOrders = ({ machines, people, fixtures, tineSets = [] }: Course): readonly Order[] => [
  ...tineSets.map((tines, i) => ({
    where: inClub(tines.id, `tineSets[${i}]`),
    field: 'coreDiameterMm',
    value: tines.coreDiameterMm,
    limitField: 'holeDiameterMm',
    limit: tines.holeDiameterMm,
  })),
  ...machines.map((machine, i) => ({
    where: inClub(machine.name, `machines[${i}]`),
    field: 'overlapM',
    value: machine.overlapM,
    limitField: 'widthM',
    limit: machine.widthM,
  })),
  ...people.flatMap((person, i) =>
    [person.shift, ...person.breaks.map((pause) => ({ from: pause.earliest, to: pause.latest }))].map(
      ({ from, to }, part) => ({
        where: inClub(person.name, `people[${i}].${part === 0 ? 'shift' : `breaks[${part - 1}]`}`),
        field: part === 0 ? 'from' : 'earliest',
        value: from,
        limitField: part === 0 ? 'to' : 'latest',
        limit: to,
      }),
    ),
  ),
  ...fixtures.map((fixture, i) => ({
    where: inClub(fixture.name, `fixtures[${i}]`),
    field: 'from',
    value: fixture.from,
    limitField: 'to',
    limit: fixture.to,
  })),
]

const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

const breakTooLong = ({ people }: Course): CourseError | undefined => {
  for (const [i, person] of people.entries())
    for (const [b, pause] of person.breaks.entries()) {
      const max = minutesOf(pause.latest) - minutesOf(pause.earliest)
      if (pause.minutes > max)
        return {
          type: 'outOfRange',
          where: inClub(person.name, `people[${i}].breaks[${b}].minutes`),
          field: 'minutes',
          unit: 'min',
          min: 5,
          max,
          received: pause.minutes,
        }
    }
  return undefined
}

const unknownReference = (course: Course): CourseError | undefined => {
  const bays = course.places.filter(({ kind }) => kind === 'sandBay').map(({ id }) => id)
  for (const [i, store] of course.stores.entries())
    if (!bays.includes(store.place)) {
      const where = inClub(store.id, `stores[${i}].place`)
      return { type: 'unknownReference', where, what: 'sandBay', id: store.place, allowed: bays }
    }
  const greens = course.greens.map(({ id }) => id)
  for (const [i, fixture] of course.fixtures.entries()) {
    const id = fixture.greens === 'all' ? undefined : fixture.greens.find((green) => !greens.includes(green))
    const where = inClub(fixture.name, `fixtures[${i}].greens`)
    if (id !== undefined) return { type: 'unknownReference', where, what: 'green', id, allowed: greens }
  }
  return undefined
}

const tooFarApart = (greens: readonly Green[]): CourseError | undefined => {
  const [first] = greens
  if (first === undefined) return undefined
  const plane = planeAtPosition(first.at)
  for (const green of greens) {
    const { x, y } = toLocal(plane, green.at)
    // The plane is no good half round the earth, but then the difference in degrees says enough.
    const isFar = Math.abs(green.at[0] - first.at[0]) > 1 || Math.abs(green.at[1] - first.at[1]) > 1
    const distanceKm = isFar ? degreesApart(first.at, green.at) * 111.2 : Math.hypot(x, y) / 1000
    if (distanceKm > MAX_APART_KM)
      return {
        type: 'tooFarApart',
        where: { feature: null, name: green.name, path: 'geometry' },
        distanceKm: Math.round(distanceKm),
        maxKm: MAX_APART_KM,
      }
  }
  return undefined
}

/** Great-circle distance in degrees (haversine). */
const degreesApart = (a: readonly [number, number], b: readonly [number, number]): number => {
  const rad = Math.PI / 180
  const dLat = Math.sin(((b[1] - a[1]) * rad) / 2)
  const dLon = Math.sin(((b[0] - a[0]) * rad) / 2)
  const h = dLat * dLat + Math.cos(a[1] * rad) * Math.cos(b[1] * rad) * dLon * dLon
  return (2 * Math.asin(Math.min(1, Math.sqrt(h)))) / rad
}

/** What no schema can see: two of one id or name, times in the wrong order, something named that is not there. The first found. */
export const crossCheck = (course: Course): CourseError | undefined =>
  (isTimeZone(course.timeZone) ? undefined : { type: 'badTimeZone' as const, received: course.timeZone }) ??
  twoOfOneId('green', course.greens) ??
  twoOfOneName(course.greens) ??
  twoOfOneId('place', course.places) ??
  twoOfOneId('machine', course.machines) ??
  twoOfOneId('person', course.people) ??
  twoOfOneId('store', [...course.stores, ...(course.tineSets ?? [])]) ??
  twoOfOneId('fixture', course.fixtures) ??
  twoOfOneId(
    'service',
    course.greens.flatMap(({ services }) => services),
  ) ??
  tooFarApart(course.greens) ??
  notBelow([...greenOrders(course.greens), ...clubOrders(course)]) ??
  breakTooLong(course) ??
  unknownReference(course)
