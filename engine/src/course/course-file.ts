import * as v from 'valibot'
import { MACHINE_KINDS } from '../planning/operations.ts'
import {
  breakWindow,
  buriedService,
  course,
  fixture,
  green,
  id,
  lonLat,
  machine,
  organicTest,
  person,
  place,
  sandStore,
  settings,
  tineStore,
  unitsWanted,
} from './course.ts'

/** Version of the course file. 1: first. */
export const COURSE_FILE_VERSION = 1

/** Kinds of place that a feature may be, besides a green. */
export const PLACE_KINDS = place.entries.kind.options

/** Every kind that a feature may be. */
export const FEATURE_KINDS = ['green', ...PLACE_KINDS] as const

/** Most features, and most points of one outline or line. */
export const MAX_FEATURES = 5000
export const MAX_POINTS = 5000

const g = green.entries

/** Properties of a green's feature. Other properties, as drawing tools add them, are let be. */
export const greenProperties = v.object({
  kind: v.literal('green'),
  id: v.optional(id),
  name: v.optional(g.name),
  hole: v.optional(g.hole),
  areaM2: v.optional(g.areaM2),
  at: v.optional(lonLat),
  playDeg: g.playDeg,
  slope: g.slope,
  rootzone: v.optional(v.partial(g.rootzone)),
  drainage: v.optional(g.drainage),
  shade: v.optional(g.shade),
  weak: v.optional(g.weak),
  organicTests: v.optional(v.array(organicTest)),
  services: v.optional(v.array(buriedService)),
  servicesChecked: v.optional(v.boolean()),
})

/** Properties of another place's feature. */
export const placeProperties = v.object({
  kind: v.picklist(PLACE_KINDS),
  id: v.optional(id),
  name: v.optional(place.entries.name),
  at: v.optional(lonLat),
  oneWay: place.entries.oneWay,
})

const { kind: _kind, ...machineFacts } = machine.entries
const { name: personName, ...personFacts } = person.entries
const { sets: setsInStock, holeDiameterMm, coreDiameterMm, ...tineFacts } = tineStore.entries
const { kind: storeKind, stockT, ...storeFacts } = sandStore.entries

/** A machine: its kind, and whatever else is known of it. */
export const machineInFile = v.strictObject({
  kind: v.picklist(MACHINE_KINDS),
  ...v.partial(v.object(machineFacts)).entries,
})

const shiftInFile = v.strictObject(person.entries.shift.entries)
const breakInFile = v.strictObject(breakWindow.entries)

/** A person: the name, and whatever else is known. */
export const personInFile = v.strictObject({
  name: personName,
  ...v.partial(v.object({ ...personFacts, shift: shiftInFile, breaks: v.array(breakInFile) })).entries,
})

/** Sand: kind and stock, and whatever else is known. */
export const storeInFile = v.strictObject({
  kind: storeKind,
  stockT,
  ...v.partial(v.object(storeFacts)).entries,
})

/** Tine sets: which tine and how many, and whatever else is known. */
export const tinesInFile = v.strictObject({
  holeDiameterMm,
  coreDiameterMm,
  sets: setsInStock,
  ...v.partial(v.object(tineFacts)).entries,
})

const fixtureInFile = v.strictObject({ ...fixture.entries, id: v.optional(id) })
const settingsInFile = v.strictObject(v.partial(settings).entries)
const unitsInFile = v.strictObject(v.partial(unitsWanted).entries)

/** The foreign member `swardwright`: all of a course that is no feature. A field that has no meaning here is an error. */
export const clubMember = v.strictObject({
  version: v.literal(COURSE_FILE_VERSION),
  id: v.optional(id),
  name: v.optional(g.name),
  timeZone: v.optional(v.pipe(v.string(), v.minLength(1))),
  altitudeM: v.optional(course.entries.altitudeM),
  now: v.optional(course.entries.now),
  machines: v.optional(v.array(machineInFile)),
  people: v.optional(v.array(personInFile)),
  stores: v.optional(v.array(storeInFile)),
  tineSets: v.optional(v.array(tinesInFile)),
  fixtures: v.optional(v.array(fixtureInFile)),
  settings: v.optional(settingsInFile),
  units: v.optional(unitsInFile),
  assumed: v.optional(v.array(v.string())),
})

/** [longitude, latitude], and perhaps a height, as drawing tools write it. */
const position = v.union([v.strictTuple(lonLat.items), v.strictTuple([...lonLat.items, v.number()])])

const pointGeometry = v.object({ type: v.literal('Point'), coordinates: position })
const polygonGeometry = v.object({
  type: v.literal('Polygon'),
  coordinates: v.pipe(
    v.array(v.pipe(v.array(position), v.minLength(4), v.maxLength(MAX_POINTS))),
    v.minLength(1),
  ),
})
const lineGeometry = v.object({
  type: v.literal('LineString'),
  coordinates: v.pipe(v.array(position), v.minLength(2), v.maxLength(MAX_POINTS)),
})

const featureId = v.optional(v.union([v.string(), v.number()]))

/** A green as a feature: its outline, or a point and an area. */
const greenFeature = v.object({
  type: v.literal('Feature'),
  id: featureId,
  properties: greenProperties,
  geometry: v.union([polygonGeometry, pointGeometry]),
})

const placeFeature = v.object({
  type: v.literal('Feature'),
  id: featureId,
  properties: placeProperties,
  geometry: v.union([polygonGeometry, lineGeometry, pointGeometry]),
})

/** Anything without a kind: left out, and said so. */
const otherFeature = v.object({
  type: v.literal('Feature'),
  properties: v.nullish(v.object({ kind: v.optional(v.null()) })),
})

/**
 * The form of a course file, as published for other programs. `readCourse` reads with the parts of this schema, so that its errors can
 * name the green, and asks more than a schema can say: closed rings, no crossing, one name a green, known places.
 */
export const courseFile = v.object({
  type: v.literal('FeatureCollection'),
  features: v.pipe(
    v.array(v.union([greenFeature, placeFeature, otherFeature])),
    v.minLength(1),
    v.maxLength(MAX_FEATURES),
  ),
  swardwright: v.optional(clubMember),
})

export type GreenProperties = Readonly<v.InferOutput<typeof greenProperties>>
export type MachineInFile = Readonly<v.InferOutput<typeof machineInFile>>
export type PersonInFile = Readonly<v.InferOutput<typeof personInFile>>
export type TinesInFile = Readonly<v.InferOutput<typeof tinesInFile>>
export type StoreInFile = Readonly<v.InferOutput<typeof storeInFile>>
export type ClubMember = Readonly<v.InferOutput<typeof clubMember>>
