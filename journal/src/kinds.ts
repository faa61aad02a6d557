import type * as v from 'valibot'
import { courseChangedBody } from './courseChange.ts'
import type { Entry } from './entry.ts'
import { EXAMPLE_PLAN, EXAMPLE_PRESCRIPTION } from './kindExamples.ts'
import { kind, type Kind, type KindTable } from './kind.ts'
import type { Role } from './roles.ts'
import {
  accessChangedBody,
  deliveryReceivedBody,
  measureTakenBody,
  noticeSentBody,
  photoTakenBody,
  playChangedBody,
  stockUsedBody,
} from './recordBodies.ts'
import { planSettledBody, prescriptionSettledBody } from './settledBodies.ts'
import { forecastReceivedBody, rainBeganBody, rainEndedBody, rainTypedBody } from './weatherBodies.ts'
import {
  greenFinishedBody,
  noteWrittenBody,
  problemReportedBody,
  problemSolvedBody,
  runsDrivenBody,
  struckBody,
  taskFinishedBody,
  taskStartedBody,
  taskStoppedBody,
} from './workBodies.ts'

const DECIDES: readonly Role[] = ['manager', 'deputy']
const WORKS: readonly Role[] = ['manager', 'deputy', 'crew']
/** The server writes it; a manager's device hands it on again after a backup was put back. */
const HANDS_ON: readonly Role[] = ['manager']
const EXAMPLE_SHA256 = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
const EXAMPLE_ID = '0198e2f4-6a00-7cc3-98c4-dc0c0c07398f'

/** What every kind begins with. */
const FIRST = { version: 1, acceptedFrom: 1, lifts: [] } as const

/**
 * Every kind of entry. Closed for writing: a server takes a kind that is not here only from those who decide. Open for reading: a kind
 * that is not here is kept and handed on. A new kind is one row here, one body schema and one case in `evolve`.
 */
export const KINDS = {
  courseChanged: kind({
    // 2: greens may carry a line of play and a slope, tracks a direction, dressers a loaded speed; grounds may be no-go.
    version: 2,
    acceptedFrom: 1,
    lifts: [(body) => body],
    meaning: 'The course was set up or changed.',
    roles: DECIDES,
    body: courseChangedBody,
    example: { changes: [{ part: 'greens', do: 'set', id: 'g07', fields: { weak: true, shade: 'dense' } }] },
  }),
  prescriptionSettled: kind({
    ...FIRST,
    meaning: 'What is done to which greens was settled.',
    roles: DECIDES,
    body: prescriptionSettledBody,
    example: { prescription: EXAMPLE_PRESCRIPTION },
  }),
  planSettled: kind({
    ...FIRST,
    meaning: 'A plan was settled.',
    roles: DECIDES,
    body: planSettledBody,
    example: { plan: EXAMPLE_PLAN },
  }),
  forecastReceived: kind({
    ...FIRST,
    meaning: 'A forecast came in.',
    roles: DECIDES,
    body: forecastReceivedBody,
    example: {
      source: 'file',
      name: 'forecast.json',
      forecast: {
        hourly_units: { time: 'iso8601', precipitation: 'mm', temperature_2m: '°C' },
        hourly: {
          time: ['2026-08-10T06:00', '2026-08-10T07:00'],
          precipitation: [0, 0.4],
          temperature_2m: [12.1, 13],
        },
      },
    },
  }),
  rainTyped: kind({
    ...FIRST,
    meaning: 'Rain was typed in by hand.',
    roles: DECIDES,
    body: rainTypedBody,
    example: {
      from: '2026-08-11',
      to: '2026-08-11',
      spells: [{ start: '2026-08-11T14:00:00+01:00', finish: '2026-08-11T17:00:00+01:00', mmPerH: 1.5 }],
    },
  }),
  taskStarted: kind({
    ...FIRST,
    meaning: 'One step on one green was started.',
    roles: WORKS,
    body: taskStartedBody,
    example: { green: 'g07', operation: 'core', pass: 1, machine: 'corer' },
  }),
  taskStopped: kind({
    ...FIRST,
    meaning: 'One step on one green was broken off before its end.',
    roles: WORKS,
    body: taskStoppedBody,
    example: { green: 'g07', operation: 'core', pass: 1, why: 'rain' },
  }),
  taskFinished: kind({
    ...FIRST,
    meaning: 'One step on one green was finished.',
    roles: WORKS,
    body: taskFinishedBody,
    example: { green: 'g07', operation: 'core', pass: 1 },
  }),
  greenFinished: kind({
    ...FIRST,
    meaning: 'A green was finished: every step is done.',
    roles: WORKS,
    body: greenFinishedBody,
    example: { green: 'g07' },
  }),
  runsDriven: kind({
    ...FIRST,
    meaning: 'An operation was driven over a green in this heading.',
    roles: WORKS,
    body: runsDrivenBody,
    example: { green: 'g07', operation: 'cut', headingDeg: 62 },
  }),
  problemReported: kind({
    // 2: late, slower and sand short are problems of their own.
    // 3: tines short too.
    version: 3,
    acceptedFrom: 1,
    lifts: [(body) => body, (body) => body],
    meaning: 'A machine or person is out, or something else is wrong.',
    roles: WORKS,
    body: problemReportedBody,
    example: { problem: 'machineOut', machine: 'corer', words: 'Drive belt gone' },
  }),
  problemSolved: kind({
    ...FIRST,
    meaning: 'A reported problem is over.',
    roles: WORKS,
    body: problemSolvedBody,
    example: { problem: EXAMPLE_ID },
  }),
  rainBegan: kind({
    ...FIRST,
    meaning: 'It began to rain.',
    roles: WORKS,
    body: rainBeganBody,
    example: {},
  }),
  rainEnded: kind({
    ...FIRST,
    meaning: 'The rain ended.',
    roles: WORKS,
    body: rainEndedBody,
    example: {},
  }),
  deliveryReceived: kind({
    ...FIRST,
    meaning: 'Sand was delivered.',
    roles: WORKS,
    body: deliveryReceivedBody,
    example: { store: 'bay', massT: 28.5, loads: 1, ticket: '4711' },
  }),
  stockUsed: kind({
    ...FIRST,
    meaning: 'Sand was taken from a store.',
    roles: WORKS,
    body: stockUsedBody,
    example: { store: 'bay', massT: 1.2, green: 'g07' },
  }),
  measureTaken: kind({
    ...FIRST,
    meaning: 'Something was measured on a green.',
    roles: WORKS,
    body: measureTakenBody,
    example: { measure: 'moisture', green: 'g07', waterPercent: 24.5, overMm: 60 },
  }),
  photoTaken: kind({
    // 2: a photo may name the step at which it was taken, and the problem or reading that it shows.
    version: 2,
    acceptedFrom: 1,
    lifts: [(body) => body],
    meaning: 'A photo was taken.',
    roles: WORKS,
    body: photoTakenBody,
    example: {
      sha256: EXAMPLE_SHA256,
      type: 'image/jpeg',
      bytes: 412_000,
      green: 'g07',
      purpose: 'recovery',
    },
  }),
  noticeSent: kind({
    ...FIRST,
    meaning: 'A notice was sent.',
    roles: DECIDES,
    body: noticeSentBody,
    example: { audience: 'members', way: 'poster', words: 'Greens 1 to 6 are renovated on Monday.' },
  }),
  playChanged: kind({
    ...FIRST,
    meaning: 'Golfers may play a green again, play a temporary one instead, or not at all.',
    roles: DECIDES,
    body: playChangedBody,
    example: { green: 'g07', play: 'onTemporary' },
  }),
  accessChanged: kind({
    // 2: a members' page was opened or closed; a page has no role.
    // 3: tokens for scripts are told too.
    version: 3,
    acceptedFrom: 1,
    lifts: [(body) => body, (body) => body],
    meaning: 'Somebody was let in, or their access ended.',
    roles: HANDS_ON,
    body: accessChangedBody,
    example: { change: 'deviceJoined', access: 'd41c8a02', name: 'Shed tablet', role: 'crew' },
  }),
  noteWritten: kind({
    ...FIRST,
    meaning: 'A note was written.',
    roles: WORKS,
    body: noteWrittenBody,
    example: { words: 'Wet hollow at the front left', about: { what: 'green', id: 'g07' } },
  }),
  struck: kind({
    ...FIRST,
    meaning: 'An entry was struck out: it does not count. Crew strike out only what came from themselves.',
    roles: WORKS,
    body: struckBody,
    example: { entry: EXAMPLE_ID, reason: 'Tapped the wrong green' },
  }),
} as const satisfies KindTable

/** The name of a kind. */
export type KindName = keyof typeof KINDS

/** All names of kinds, in the order of the table. */
export const KIND_NAMES = Object.keys(KINDS) as readonly KindName[]

/** The body of a kind, in the version of today. */
export type BodyOf<K extends KindName> = Readonly<v.InferOutput<(typeof KINDS)[K]['body']>>

/** An entry whose kind is known and whose body is lifted and checked. */
export type KnownEntry = {
  [K in KindName]: Omit<Entry, 'kind' | 'body'> & { readonly kind: K; readonly body: BodyOf<K> }
}[KindName]

/** The kind of that name, if the table has it. */
export const findKind = (kinds: KindTable, name: string): Kind | undefined =>
  Object.hasOwn(kinds, name) ? kinds[name] : undefined
