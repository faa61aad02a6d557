import * as v from 'valibot'
import { OPERATIONS, idSchema } from '@swardwright/engine'
import { counted, measured } from './measured.ts'
import { momentSchema } from './moment.ts'
import { words } from './settledBodies.ts'
import { entryId } from './uuid.ts'

/** One covering of one green. `plan` and `task` name the planned task, where it was one. */
const covering = {
  green: idSchema,
  operation: v.picklist(OPERATIONS),
  pass: v.optional(counted('Covering, from 1', 1)),
  load: v.optional(counted('Dresser load, from 1', 1)),
  plan: v.optional(v.pipe(entryId, v.description('Id of the planSettled entry'))),
  task: v.optional(v.pipe(idSchema, v.description('Id of the task in that plan'))),
}

/** Body of `taskStarted`. The machine is named, so that paces are learned by operation and machine, never by person. */
export const taskStartedBody = v.strictObject({ ...covering, machine: v.optional(idSchema) })

/** Body of `taskStopped`: broken off before its end, to be taken up again. */
export const taskStoppedBody = v.strictObject({
  ...covering,
  why: v.picklist(['rain', 'machine', 'person', 'dark', 'other']),
  words: v.optional(words),
})

/** Body of `taskFinished`: one covering of one green. */
export const taskFinishedBody = v.strictObject(covering)

/** Body of `greenFinished`: the one tap; every step of this green is done. */
export const greenFinishedBody = v.strictObject({
  green: idSchema,
  plan: v.optional(v.pipe(entryId, v.description('Id of the planSettled entry'))),
})

/** Body of `runsDriven`: in which heading the first pass of an operation was driven, so that next time's differs. */
export const runsDrivenBody = v.strictObject({
  green: idSchema,
  operation: v.picklist(OPERATIONS),
  headingDeg: measured(
    'Compass bearing of the runs (a run goes both ways, so 10 and 190 are the same)',
    'degrees',
    0,
    360,
  ),
})

/** Body of `problemReported`. */
export const problemReportedBody = v.variant('problem', [
  v.strictObject({ problem: v.literal('machineOut'), machine: idSchema, words: v.optional(words) }),
  v.strictObject({ problem: v.literal('personOut'), person: idSchema, words: v.optional(words) }),
  v.strictObject({ problem: v.literal('green'), green: idSchema, words }),
  v.strictObject({
    problem: v.literal('late'),
    person: v.optional(v.pipe(idSchema, v.description('Who comes later; everybody where nobody is named'))),
    until: v.pipe(momentSchema, v.description('When the work, or this person, begins')),
    words: v.optional(words),
  }),
  v.strictObject({
    problem: v.literal('slower'),
    machine: idSchema,
    factor: measured('How long the work takes; below 1 is faster', 'times the planned minutes', 0.3, 5),
    words: v.optional(words),
  }),
  v.strictObject({
    problem: v.literal('sandShort'),
    sand: v.picklist(['damp', 'kilnDried']),
    massT: measured('Dry sand of this kind that lies in the bays now', 't', 0, 2000),
    words: v.optional(words),
  }),
  v.strictObject({
    problem: v.literal('tinesShort'),
    store: v.pipe(idSchema, v.description('Tine sets of the course; their kind is meant')),
    sets: measured('What is left now of this kind; a half-worn set counts half', 'sets', 0, 200),
    words: v.optional(words),
  }),
  v.strictObject({ problem: v.literal('other'), words }),
])

/** Body of `problemSolved`. */
export const problemSolvedBody = v.strictObject({
  problem: v.pipe(entryId, v.description('Id of the problemReported entry')),
  words: v.optional(words),
})

/** Body of `noteWritten`; `about` says what it is pinned to. */
export const noteWrittenBody = v.strictObject({
  words,
  about: v.optional(
    v.strictObject({ what: v.picklist(['green', 'machine', 'person', 'place']), id: idSchema }),
  ),
})

/** Body of `struck`: the entry that does not count, and why. */
export const struckBody = v.strictObject({
  entry: v.pipe(entryId, v.description('Id of the entry struck out')),
  reason: words,
})
