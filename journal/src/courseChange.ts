import * as v from 'valibot'
import {
  courseSchema,
  fixtureSchema,
  greenSchema,
  idSchema,
  machineSchema,
  personSchema,
  placeSchema,
  sandStoreSchema,
  settingsSchema,
  tineStoreSchema,
  unitsWantedSchema,
} from '@swardwright/engine'

/** Fields of an item that may change one by one; a field of another name is refused, since it would change nothing. */
const greenFields = v.partial(v.strictObject(v.omit(greenSchema, ['id']).entries))
const placeFields = v.partial(v.strictObject(v.omit(placeSchema, ['id']).entries))
const machineFields = v.partial(v.strictObject(v.omit(machineSchema, ['id']).entries))
const personFields = v.partial(v.strictObject(v.omit(personSchema, ['id']).entries))
const storeFields = v.partial(v.strictObject(v.omit(sandStoreSchema, ['id']).entries))
const tineFields = v.partial(v.strictObject(v.omit(tineStoreSchema, ['id']).entries))
const fixtureFields = v.partial(v.strictObject(v.omit(fixtureSchema, ['id']).entries))
const factFields = v.partial(
  v.strictObject(v.pick(courseSchema, ['name', 'timeZone', 'altitudeM', 'now']).entries),
)

type ListOptions<
  P extends string,
  I extends v.GenericSchema,
  F extends v.GenericSchema,
  C extends v.ObjectEntries,
> = {
  readonly part: P
  /** One whole item. */
  readonly item: I
  /** Its fields, all optional. */
  readonly fields: F
  /** `clearing(...)` with the fields that an item may do without; empty where it needs them all. */
  readonly clear: C
}

/** The entry `clear`: names of fields that `set` empties. */
const clearing = <const C extends readonly [string, ...string[]]>(...names: C) => ({
  clear: v.optional(v.array(v.picklist(names))),
})

/** Changes to one list of the course: put an item in, set fields of one, take one out. */
const listChange = <
  const P extends string,
  I extends v.GenericSchema,
  F extends v.GenericSchema,
  C extends v.ObjectEntries,
>({
  part,
  item,
  fields,
  clear,
}: ListOptions<P, I, F, C>) =>
  v.variant('do', [
    v.strictObject({ part: v.literal(part), do: v.literal('put'), value: item }),
    v.strictObject({ part: v.literal(part), do: v.literal('set'), id: idSchema, fields, ...clear }),
    v.strictObject({ part: v.literal(part), do: v.literal('remove'), id: idSchema }),
  ])

/**
 * One change to a course, as small as the person made it, so that two people who change different fields of one green keep both.
 * - `{part: 'course', do: 'put', value}`: the whole course, as a course file was read.
 * - `{part: 'greens', do: 'put', value}`: a green new or anew, by its id; so for places, machines, people, stores, tineSets, fixtures.
 * - `{part: 'greens', do: 'set', id, fields, clear?}`: some fields of one green; `clear` empties fields it may do without.
 * - `{part: 'greens', do: 'remove', id}`: a green out.
 * - `{part: 'settings' | 'units' | 'facts', do: 'set', fields}`: some settings, units, or name, time zone, altitude and now.
 */
export const courseChange = v.variant('part', [
  v.strictObject({ part: v.literal('course'), do: v.literal('put'), value: courseSchema }),
  listChange({
    part: 'greens',
    item: greenSchema,
    fields: greenFields,
    clear: clearing('outline', 'playDeg', 'slope'),
  }),
  listChange({
    part: 'places',
    item: placeSchema,
    fields: placeFields,
    clear: clearing('line', 'outline', 'oneWay'),
  }),
  listChange({
    part: 'machines',
    item: machineSchema,
    fields: machineFields,
    clear: clearing(
      'loadedTravelMPerS',
      'strokesPerMin',
      'hopperT',
      'loadMin',
      'spinner',
      'vibrationMPerS2',
      'outOn',
    ),
  }),
  listChange({ part: 'people', item: personSchema, fields: personFields, clear: clearing('awayOn') }),
  listChange({ part: 'stores', item: sandStoreSchema, fields: storeFields, clear: {} }),
  listChange({ part: 'tineSets', item: tineStoreSchema, fields: tineFields, clear: {} }),
  listChange({ part: 'fixtures', item: fixtureSchema, fields: fixtureFields, clear: {} }),
  v.strictObject({
    part: v.literal('settings'),
    do: v.literal('set'),
    fields: v.partial(v.strictObject(settingsSchema.entries)),
  }),
  v.strictObject({
    part: v.literal('units'),
    do: v.literal('set'),
    fields: v.partial(v.strictObject(unitsWantedSchema.entries)),
  }),
  v.strictObject({ part: v.literal('facts'), do: v.literal('set'), fields: factFields }),
])

/** One change to a course. */
export type CourseChange = v.InferOutput<typeof courseChange>

/** Body of `courseChanged`: changes in the order in which they were made, at least one. */
export const courseChangedBody = v.strictObject({ changes: v.pipe(v.array(courseChange), v.minLength(1)) })
