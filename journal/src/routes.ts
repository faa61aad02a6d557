import * as v from 'valibot'
import { plainDateSchema } from '@swardwright/engine'
import { courseId, storedEntrySchema } from './entry.ts'
import { momentSchema } from './moment.ts'
import { pushAnswerSchema } from './refusals.ts'
import { ACCESS_ROUTES } from './accessRoutes.ts'
import { BLOB_ROUTES } from './blobRoutes.ts'
import { MEMBERS_ROUTES } from './membersRoutes.ts'
import {
  DECIDERS,
  EVERYBODY,
  MANAGERS,
  MEMBERS,
  WORKERS,
  courseParams,
  listOf,
  route,
  type AnySchema,
  type Route,
  type Rule,
} from './route.ts'
import type { Role } from './roles.ts'
import { historyOutcome, historyUpload, keptHistory, WEATHER_KINDS, weatherAnswer } from './weatherAnswer.ts'

/** Most entries in one push, and in one page of a pull. */
export const ENTRIES_MAX = 1000

const courseName = v.pipe(
  v.string(),
  v.trim(),
  v.minLength(1),
  v.maxLength(120),
  v.description('Name of the course'),
)

const courseRow = v.object({ id: courseId, name: courseName })

/** One field of an input or output. */
const fieldSchema = v.object({
  field: v.pipe(v.string(), v.description('Path of the field; fields of lists are written layers[].toMm')),
  meaning: v.string(),
  unit: v.pipe(v.string(), v.description('Unit as on screens; 1 for shares and counts, empty for words')),
  min: v.nullable(v.number()),
  max: v.nullable(v.number()),
  symbol: v.nullable(v.string()),
  optional: v.boolean(),
  default: v.nullable(v.union([v.number(), v.string(), v.boolean()])),
  choices: v.nullable(listOf(v.string(), 'The words accepted')),
})

const calculationList = listOf(
  v.object({
    name: v.pipe(v.string(), v.description('Name to run it by, such as tining.areaShare')),
    title: v.string(),
    words: v.pipe(v.string(), v.description('The formula in words')),
    formula: v.pipe(v.string(), v.description('The formula in symbols')),
    evidence: v.pipe(v.string(), v.description('How good the ground is that it stands on')),
    inputs: listOf(fieldSchema, 'What it takes'),
    outputs: listOf(fieldSchema, 'What it gives'),
    sources: listOf(
      v.object({ id: v.string(), text: v.string(), url: v.nullable(v.string()) }),
      'Where it comes from',
    ),
    notes: listOf(v.string(), 'Where sources disagree, and what is left out'),
    checks: listOf(v.record(v.string(), v.unknown()), 'Published rows that it reproduces'),
  }),
  'Every calculation, as calc list --json prints it',
)

/** Every route of the server, with its rule. */
export const ROUTES = {
  health: route({
    method: 'GET',
    path: '/health',
    rule: EVERYBODY,
    summary: 'Whether the server and its store answer.',
    answer: 'json',
    params: null,
    query: null,
    body: null,
    output: v.object({ status: v.literal('ok'), version: v.string() }),
  }),
  courses: route({
    method: 'GET',
    path: '/api/courses',
    rule: MEMBERS,
    summary: 'The courses kept here, of those that the asker may see.',
    answer: 'json',
    params: null,
    query: null,
    body: null,
    output: listOf(courseRow, 'By name'),
  }),
  addCourse: route({
    method: 'POST',
    path: '/api/courses',
    rule: MANAGERS,
    summary: 'Makes a course: with an empty journal, or as a copy of the demo.',
    answer: 'json',
    params: null,
    query: null,
    body: v.object({
      name: courseName,
      from: v.optional(
        v.pipe(v.picklist(['nothing', 'demo']), v.description('What the journal begins with')),
        'nothing',
      ),
    }),
    output: courseRow,
  }),
  pushEntries: route({
    method: 'POST',
    path: '/api/courses/:course/entries',
    rule: WORKERS,
    summary:
      'Takes entries in, each on its own. Answers once they are durable. An entry that is known already is accepted again.',
    answer: 'json',
    params: courseParams,
    query: null,
    body: v.object({
      entries: v.pipe(
        v.array(v.unknown()),
        v.maxLength(ENTRIES_MAX),
        v.description('Entries (schema Entry); each is judged on its own'),
      ),
      sentAt: v.optional(
        v.pipe(
          momentSchema,
          v.description(
            'The sender’s clock as it sends: how far it is off is noted, and beyond a day nothing is taken',
          ),
        ),
      ),
      handedOn: v.optional(
        v.pipe(
          v.boolean(),
          v.description(
            'True for entries of others, handed on after the server was put back from a backup; from manager and deputy only',
          ),
        ),
      ),
    }),
    output: pushAnswerSchema,
  }),
  pullEntries: route({
    method: 'GET',
    path: '/api/courses/:course/entries',
    rule: MEMBERS,
    summary: 'Entries after a cursor, in the order in which they came in.',
    answer: 'json',
    params: courseParams,
    query: v.object({
      after: v.optional(
        v.pipe(v.string(), v.maxLength(60), v.description('Cursor of the page before; 0 is the beginning')),
        '0',
      ),
      seen: v.optional(
        v.pipe(
          v.string(),
          v.maxLength(60),
          v.description('The furthest cursor that any answer has told; where it is no longer here, `reset`'),
        ),
        '0',
      ),
      limit: v.optional(
        v.pipe(
          v.string(),
          v.regex(/^[1-9]\d{0,3}$/u, `a whole number from 1 to ${ENTRIES_MAX}`),
          v.transform(Number),
          v.maxValue(ENTRIES_MAX),
          v.description(`Most entries wanted, 1 to ${ENTRIES_MAX}`),
        ),
        '500',
      ),
    }),
    body: null,
    output: v.object({
      entries: listOf(storedEntrySchema, 'In the order in which they came in'),
      cursor: v.pipe(v.string(), v.description('Give this as `after` for the next page')),
      more: v.pipe(v.boolean(), v.description('Whether there are entries beyond this page')),
      reset: v.pipe(
        v.boolean(),
        v.description(
          'True when the cursor belongs to a journal that is no longer here (put back from a backup): the page begins at the beginning, and the reader should push again whatever it has',
        ),
      ),
    }),
  }),
  live: route({
    method: 'GET',
    path: '/api/courses/:course/live',
    rule: MEMBERS,
    summary:
      'Server-sent events: `entries` with the new end of the journal, at once and whenever entries came in. Pull to read them.',
    answer: 'events',
    params: courseParams,
    query: null,
    body: null,
    output: v.object({ cursor: v.string() }),
  }),
  calculations: route({
    method: 'GET',
    path: '/api/calculations',
    rule: EVERYBODY,
    summary: 'Every calculation with its inputs, outputs, sources and published checks.',
    answer: 'json',
    params: null,
    query: null,
    body: null,
    output: calculationList,
  }),
  calculate: route({
    method: 'POST',
    path: '/api/calculations/:name',
    rule: MEMBERS,
    summary: 'Runs one calculation.',
    answer: 'json',
    params: v.object({
      name: v.pipe(v.string(), v.maxLength(80), v.description('Name of the calculation')),
    }),
    query: null,
    body: v.unknown(),
    output: v.unknown(),
  }),
  weather: route({
    method: 'GET',
    path: '/api/courses/:course/weather',
    rule: MEMBERS,
    summary:
      'The hours ahead from the weather service of this server, kept for when it is away, and how things stand with it.',
    answer: 'json',
    params: courseParams,
    query: v.object({
      kind: v.optional(
        v.pipe(v.picklist(WEATHER_KINDS), v.description('One forecast, or an ensemble of them')),
        'forecast',
      ),
    }),
    body: null,
    output: weatherAnswer,
  }),
  chooseWeather: route({
    method: 'POST',
    path: '/api/courses/:course/weather',
    rule: MANAGERS,
    summary: 'Says whether the weather service may be asked for this course. Off, nothing is sent out.',
    answer: 'json',
    params: courseParams,
    query: null,
    body: v.object({ on: v.pipe(v.boolean(), v.description('True: ask; false: ask no more')) }),
    output: v.object({ on: v.boolean() }),
  }),
  history: route({
    method: 'GET',
    path: '/api/courses/:course/weather/history',
    rule: MEMBERS,
    summary: 'The daily record of the course, or a part of it.',
    answer: 'json',
    params: courseParams,
    query: v.object({
      from: v.optional(
        v.pipe(plainDateSchema, v.description('First day wanted; the first there is unless told')),
      ),
      to: v.optional(
        v.pipe(plainDateSchema, v.description('Last day wanted; the last there is unless told')),
      ),
    }),
    body: null,
    output: v.object({
      history: v.pipe(
        v.nullable(keptHistory),
        v.description('Null where there is no record, or none of those days'),
      ),
    }),
  }),
  uploadHistory: route({
    method: 'POST',
    path: '/api/courses/:course/weather/history',
    rule: DECIDERS,
    summary: 'Takes in a file of daily weather; it replaces the record before.',
    answer: 'json',
    params: courseParams,
    query: null,
    body: historyUpload,
    output: historyOutcome,
  }),
  fetchHistory: route({
    method: 'POST',
    path: '/api/courses/:course/weather/archive',
    rule: DECIDERS,
    summary:
      'Fetches daily weather of past years for the place from the archive; it replaces the record before.',
    answer: 'json',
    params: courseParams,
    query: null,
    body: v.object({
      from: v.pipe(plainDateSchema, v.description('First day')),
      to: v.pipe(plainDateSchema, v.description('Last day')),
    }),
    output: historyOutcome,
  }),
  ...ACCESS_ROUTES,
  ...BLOB_ROUTES,
  ...MEMBERS_ROUTES,
  openApi: route({
    method: 'GET',
    path: '/api/openapi.json',
    rule: EVERYBODY,
    summary: 'This document.',
    answer: 'json',
    params: null,
    query: null,
    body: null,
    output: v.record(v.string(), v.unknown()),
  }),
} as const satisfies Record<string, Route>

/** The name of a route. */
export type RouteName = keyof typeof ROUTES

type InOf<S> = S extends AnySchema ? v.InferInput<S> : undefined

/** What a caller gives a route: `undefined` for a part that it has not. */
export type RouteArguments<N extends RouteName> = {
  readonly params: InOf<(typeof ROUTES)[N]['params']>
  readonly query: InOf<(typeof ROUTES)[N]['query']>
  readonly body: InOf<(typeof ROUTES)[N]['body']>
}

/** What a route answers. */
export type RouteOutput<N extends RouteName> = v.InferOutput<(typeof ROUTES)[N]['output']>

/** Whether somebody may call a route; `null` is somebody without log-in. */
export const isAllowed = (rule: Rule, role: Role | null): boolean => rule.includes(role ?? 'public')
