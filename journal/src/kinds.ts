import type * as v from 'valibot'
import { courseChangedBody } from './courseChange.ts'
import type { Entry } from './entry.ts'
import { EXAMPLE_PLAN, EXAMPLE_PRESCRIPTION } from './kindExamples.ts'
import { kind, type Kind, type KindTable } from './kind.ts'
import type { Role } from './roles.ts'
import { planSettledBody, prescriptionSettledBody } from './settledBodies.ts'
import { forecastReceivedBody, rainBeganBody, rainEndedBody, rainTypedBody } from './weatherBodies.ts'
import {
  greenFinishedBody,
  noteWrittenBody,
  problemReportedBody,
  problemSolvedBody,
  struckBody,
  taskFinishedBody,
} from './workBodies.ts'

const DECIDES: readonly Role[] = ['manager', 'deputy']
const WORKS: readonly Role[] = ['manager', 'deputy', 'crew']
const EXAMPLE_ID = '0198e2f4-6a00-7cc3-98c4-dc0c0c07398f'

/** What every kind begins with. */
const FIRST = { version: 1, acceptedFrom: 1, lifts: [] } as const

/**
 * Every kind of entry. Closed for writing: a server takes a kind that is not here only from those who decide. Open for reading: a kind
 * that is not here is kept and handed on. A new kind is one row here, one body schema and one case in `evolve`.
 */
export const KINDS = {
  courseChanged: kind({
    ...FIRST,
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
  problemReported: kind({
    ...FIRST,
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
