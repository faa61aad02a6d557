import * as v from 'valibot'
import { count, quantity } from '../../catalogue/quantity.ts'
import { id, plainDate } from '../../course/course.ts'
import { OPERATIONS } from '../operations.ts'
import { instant } from '../plan.ts'

const at = v.pipe(instant, v.description('When it happened'))

const pass = v.optional(count({ meaning: 'Covering, from 1; 1 where it is not told', min: 1, max: 6 }))
const load = v.optional(count({ meaning: 'Dresser load, from 1; 1 where it is not told', min: 1, max: 99 }))

/** What a fact about work is about: a task of the plan by its id, or a green and an operation. */
const work = {
  task: v.optional(v.pipe(id, v.description('Id of the task in the plan that is replanned'))),
  green: v.optional(id),
  operation: v.optional(v.picklist(OPERATIONS)),
  pass,
  load,
}

const outage = {
  from: v.pipe(instant, v.description('Since when, or from when on')),
  until: v.pipe(
    v.nullable(instant),
    v.description('Back from then on; null where nobody knows: then not again within the days planned'),
  ),
}

/** A step was begun. */
const started = v.strictObject({ kind: v.literal('started'), ...work, at })

/** A step was finished; with a green alone, the one tap: all its steps are done. Steps before it are done too. */
const finished = v.strictObject({ kind: v.literal('finished'), ...work, at })

/** A step was broken off before it was done; what is left of it is done later. */
const stopped = v.strictObject({
  kind: v.literal('stopped'),
  ...work,
  at,
  doneShare: v.optional(
    quantity({
      meaning: 'Share of the step that is done; the time worked on it tells where it is not told',
      unit: '1',
      min: 0,
      max: 1,
    }),
  ),
})

/** Nobody, or this person, begins before then on that day. */
const late = v.strictObject({
  kind: v.literal('late'),
  person: v.optional(id),
  at: v.pipe(instant, v.description('When the work, or this person, begins that day')),
})

const machineOut = v.strictObject({ kind: v.literal('machineOut'), machine: id, ...outage })
const personOut = v.strictObject({ kind: v.literal('personOut'), person: id, ...outage })

/** It rains then. Hours are wet whole, as in a forecast. */
const rain = v.strictObject({
  kind: v.literal('rain'),
  from: instant,
  until: instant,
  mmPerH: v.optional(quantity({ meaning: 'Rain in each hour of it', unit: 'mm/h', min: 0.1, max: 100 })),
})

/** The rain that the forecast has then does not come. */
const dry = v.strictObject({ kind: v.literal('dry'), from: instant, until: instant })

/** What is left of that work takes so many times the planned minutes. At least one of the three is named. */
const slower = v.strictObject({
  kind: v.literal('slower'),
  green: v.optional(id),
  operation: v.optional(v.picklist(OPERATIONS)),
  machine: v.optional(id),
  factor: quantity({ meaning: 'Times the planned minutes; below 1 is faster', unit: '1', min: 0.3, max: 5 }),
})

const sandKind = v.picklist(['damp', 'kilnDried'])

/** So much sand of a kind lay in the bays at that moment. Later deliveries come on top. */
const sandShort = v.strictObject({
  kind: v.literal('sandShort'),
  sand: sandKind,
  massT: quantity({ meaning: 'Dry sand of this kind in the bays', unit: 't', min: 0, max: 2000 }),
  at: v.pipe(instant, v.description('When it was looked at')),
})

/** So many sets of that kind of tine were left at that moment: one has broken. Later deliveries come on top. */
const tinesShort = v.strictObject({
  kind: v.literal('tinesShort'),
  store: v.pipe(id, v.description('Tine sets of the course; their kind is meant, all its entries together')),
  sets: quantity({
    meaning: 'Sets of this kind; one that is half worn counts half',
    unit: '1',
    min: 0,
    max: 200,
  }),
  at: v.pipe(instant, v.description('When they were counted')),
})

/** A delivery comes at another time, or not at all. */
const deliveryLate = v.strictObject({
  kind: v.literal('deliveryLate'),
  store: id,
  date: v.pipe(plainDate, v.description('Day for which the course file has the delivery')),
  until: v.pipe(
    v.nullable(instant),
    v.description('When it comes; null: within the days planned not at all'),
  ),
})

/** The manager wants it so. A green with `date` or `at` is opened then; with an operation, that step begins `at`. */
const pinned = v.strictObject({
  kind: v.literal('pinned'),
  green: id,
  operation: v.optional(v.picklist(OPERATIONS)),
  pass,
  load,
  date: v.optional(plainDate),
  at: v.optional(instant),
  machine: v.optional(id),
  people: v.optional(v.pipe(v.array(id), v.minLength(1))),
})

/** The manager leaves the green out, for a reason in the own words. Only a green that is not in work. */
const skipped = v.strictObject({
  kind: v.literal('skipped'),
  green: id,
  why: v.optional(v.pipe(v.string(), v.maxLength(400))),
})

/** One fact of the day. Closed. */
export const dayFact = v.variant('kind', [
  started,
  finished,
  stopped,
  late,
  machineOut,
  personOut,
  rain,
  dry,
  slower,
  sandShort,
  tinesShort,
  deliveryLate,
  pinned,
  skipped,
])

/** Most facts in one file: a long week, one for every task and more. */
export const MAX_FACTS = 5000

/** A file of facts. Version 1. The order does not matter. */
export const factsFile = v.strictObject({
  version: v.literal(1),
  facts: v.pipe(v.array(dayFact), v.maxLength(MAX_FACTS)),
})

export type DayFact = Readonly<v.InferOutput<typeof dayFact>>
export type FactsFile = Readonly<v.InferOutput<typeof factsFile>>

/** What a fact can be. */
export type FactKind = DayFact['kind']
