import * as v from 'valibot'
import { DECIDERS, EVERYBODY, courseParams, listOf, route } from './route.ts'

/** How often one address may ask for a members' page in a minute: a whole clubhouse may share one. */
const PAGES_PER_MINUTE = 120

const key = v.pipe(
  v.string(),
  v.description('The unguessable part of the address, as it was shown when the page was opened'),
)

const pageId = v.pipe(v.string(), v.description('Id of the page, as it stands in the record of access'))

const day = v.nullable(v.string())

/** The members' page: switching it on and off, and reading it. */
export const MEMBERS_ROUTES = {
  membersPage: route({
    method: 'GET',
    path: '/api/courses/:course/members-page',
    rule: DECIDERS,
    summary: 'Whether the course has a members’ page now. Its address is not told again.',
    answer: 'json',
    params: courseParams,
    query: null,
    body: null,
    output: v.object({
      page: v.pipe(
        v.nullable(v.object({ id: pageId, since: v.string() })),
        v.description('Null while it is closed'),
      ),
    }),
  }),
  openMembersPage: route({
    method: 'POST',
    path: '/api/courses/:course/members-page',
    rule: DECIDERS,
    summary:
      'Opens the members’ page at a new address. An address given out before leads nowhere from then on.',
    answer: 'json',
    params: courseParams,
    query: null,
    body: null,
    output: v.object({
      id: pageId,
      key: v.pipe(v.string(), v.description('Goes behind /greens/; shown only this once')),
      since: v.string(),
    }),
  }),
  closeMembersPage: route({
    method: 'DELETE',
    path: '/api/courses/:course/members-page',
    rule: DECIDERS,
    summary: 'Closes the members’ page: its address leads nowhere from then on.',
    answer: 'json',
    params: courseParams,
    query: null,
    body: null,
    output: v.object({ ended: v.boolean() }),
  }),
  readMembersPage: route({
    method: 'GET',
    path: '/greens/:key',
    rule: EVERYBODY,
    summary: 'How the greens stand, for members: a page without scripts. Whoever has the address reads it.',
    answer: 'page',
    perMinute: PAGES_PER_MINUTE,
    params: v.object({ key }),
    query: null,
    body: null,
    output: v.string(),
  }),
  readMembersData: route({
    method: 'GET',
    path: '/greens/:key.json',
    rule: EVERYBODY,
    summary: 'The same for machines: a club’s own site or screen.',
    answer: 'json',
    perMinute: PAGES_PER_MINUTE,
    params: v.object({ key }),
    query: null,
    body: null,
    output: v.object({
      course: v.string(),
      headline: v.string(),
      what: v.nullable(v.string()),
      why: v.nullable(v.string()),
      notice: v.nullable(v.object({ words: v.string(), day: v.string() })),
      greens: listOf(
        v.object({
          hole: v.nullable(v.number()),
          name: v.string(),
          state: v.picklist(['open', 'planned', 'working', 'putOff', 'recovering']),
          play: v.pipe(
            v.nullable(v.picklist(['onTemporary', 'shut'])),
            v.description('What the manager set; null where the state says it'),
          ),
          workDay: day,
          finished: day,
          backFrom: day,
          backTo: day,
          called: v.string(),
          word: v.string(),
          told: v.string(),
        }),
        'In playing order; days of the course’s calendar',
      ),
      days: listOf(v.object({ date: v.string(), heading: v.string(), words: v.string() }), 'Days of work'),
      updatedAt: v.nullable(v.string()),
      updated: v.string(),
    }),
  }),
} as const
