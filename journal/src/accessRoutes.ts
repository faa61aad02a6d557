import * as v from 'valibot'
import { courseId } from './entry.ts'
import { DECIDERS, EVERYBODY, MANAGERS, MEMBERS, listOf, route } from './route.ts'
import { ROLES } from './roles.ts'

/** Shortest and longest password, characters. Length is what counts; nothing else is asked of it. */
export const PASSWORD_LENGTH = { min: 10, max: 200 } as const

/** How often one address may try a secret in a minute, beside the count of wrong guesses. */
const SECRETS_PER_MINUTE = 30

const personName = v.pipe(
  v.string(),
  v.trim(),
  v.minLength(1),
  v.maxLength(120),
  v.description('Name of the person or device, as it stands beside what they record'),
)

const newPassword = v.pipe(
  v.string(),
  v.minLength(PASSWORD_LENGTH.min, `at least ${PASSWORD_LENGTH.min} characters`),
  v.maxLength(PASSWORD_LENGTH.max, `at most ${PASSWORD_LENGTH.max} characters`),
)

const givenPassword = v.pipe(v.string(), v.maxLength(PASSWORD_LENGTH.max))

const secret = (description: string) => v.pipe(v.string(), v.maxLength(200), v.description(description))

const accessId = v.pipe(v.string(), v.regex(/^[0-9a-f]{8,32}$/u, 'the id of an account, link or device'))

const since = v.pipe(v.string(), v.description('Since when, ISO 8601'))
const until = v.pipe(v.string(), v.description('Until when, ISO 8601'))

/** Somebody who is in. */
const person = v.object({ role: v.picklist(ROLES), name: personName })

const named = { id: accessId, ...person.entries, since }

/** Who is asking, as the server sees it. */
const who = v.object({
  role: v.pipe(v.nullable(v.picklist(ROLES)), v.description('Null for somebody without log-in')),
  name: v.nullable(v.string()),
  by: v.pipe(
    v.picklist(['nobody', 'machine', 'token', 'session', 'device']),
    v.description(
      '`machine`: somebody at the server itself, who needs no log-in while nobody has made an account',
    ),
  ),
  needsSetUp: v.pipe(v.boolean(), v.description('True until the manager has made an account')),
})

const onlyCourse = v.pipe(
  v.nullable(courseId),
  v.description('The one course that it sees; null where it sees all'),
)

/** Coming in, going out, and who may. */
export const ACCESS_ROUTES = {
  who: route({
    method: 'GET',
    path: '/api/session',
    rule: EVERYBODY,
    summary: 'Who is asking.',
    answer: 'json',
    params: null,
    query: null,
    body: null,
    output: who,
  }),
  setUp: route({
    method: 'POST',
    path: '/api/set-up',
    rule: EVERYBODY,
    summary:
      'Makes the manager’s account, once, and logs in. From elsewhere it takes the code that the server printed when it started.',
    answer: 'json',
    perMinute: SECRETS_PER_MINUTE,
    params: null,
    query: null,
    body: v.object({
      code: v.optional(secret('The code from the console')),
      name: personName,
      password: newPassword,
    }),
    output: person,
  }),
  logIn: route({
    method: 'POST',
    path: '/api/session',
    rule: EVERYBODY,
    summary: 'Logs in: sets a cookie that scripts of pages can’t read.',
    answer: 'json',
    perMinute: SECRETS_PER_MINUTE,
    params: null,
    query: null,
    body: v.object({ name: personName, password: givenPassword }),
    output: person,
  }),
  logOut: route({
    method: 'DELETE',
    path: '/api/session',
    rule: EVERYBODY,
    summary: 'Ends this log-in, or the access of this device.',
    answer: 'json',
    params: null,
    query: null,
    body: null,
    output: v.object({ ended: v.boolean() }),
  }),
  changePassword: route({
    method: 'POST',
    path: '/api/session/password',
    rule: MEMBERS,
    summary: 'Changes the password of whoever is logged in, and ends their other log-ins.',
    answer: 'json',
    perMinute: SECRETS_PER_MINUTE,
    params: null,
    query: null,
    body: v.object({ old: givenPassword, new: newPassword }),
    output: person,
  }),
  join: route({
    method: 'POST',
    path: '/api/join',
    rule: EVERYBODY,
    summary: 'Uses a join link, once: this device is in from now on, until it is revoked.',
    answer: 'json',
    perMinute: SECRETS_PER_MINUTE,
    params: null,
    query: null,
    body: v.object({ token: secret('What stands behind # in the link') }),
    output: person,
  }),
  people: route({
    method: 'GET',
    path: '/api/access',
    rule: DECIDERS,
    summary: 'Accounts, devices and join links that are good now.',
    answer: 'json',
    params: null,
    query: null,
    body: null,
    output: v.object({
      accounts: listOf(v.object(named), 'Who logs in with a password'),
      devices: listOf(v.object({ ...named, until, course: onlyCourse }), 'Devices that joined by a link'),
      links: listOf(v.object({ ...named, until, course: onlyCourse }), 'Join links that nobody has used yet'),
    }),
  }),
  addAccount: route({
    method: 'POST',
    path: '/api/accounts',
    rule: MANAGERS,
    summary: 'Makes an account for somebody who logs in with a password.',
    answer: 'json',
    params: null,
    query: null,
    body: v.object({
      name: personName,
      role: v.picklist(['manager', 'deputy', 'committee']),
      password: newPassword,
    }),
    output: v.object({ id: accessId }),
  }),
  addLink: route({
    method: 'POST',
    path: '/api/access',
    rule: DECIDERS,
    summary: 'Makes a join link for one device. A deputy makes links for crew and committee only.',
    answer: 'json',
    params: null,
    query: null,
    body: v.object({
      name: personName,
      role: v.picklist(ROLES),
      course: v.optional(
        v.pipe(
          courseId,
          v.description('The one course that the device sees; all of them where none is named'),
        ),
      ),
    }),
    output: v.object({
      id: accessId,
      token: v.pipe(v.string(), v.description('Goes behind # in the address /join; shown only this once')),
      until,
    }),
  }),
  endAccess: route({
    method: 'DELETE',
    path: '/api/access/:id',
    rule: DECIDERS,
    summary:
      'Ends an account, a device’s access or a join link at once. A deputy ends crew and committee only.',
    answer: 'json',
    params: v.object({ id: accessId }),
    query: null,
    body: null,
    output: v.object({ ended: v.boolean() }),
  }),
} as const
