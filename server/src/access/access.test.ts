import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROLES, ROUTES, isAllowed, type Role, type Route } from '@swardwright/journal'
import { testServer, type TestServer } from '../testing/testServer.ts'
import { tokenHash } from './tokens.ts'

let server: TestServer
let shared: TestServer
const tokens = new Map<Role, Readonly<Record<string, string>>>()
beforeAll(async () => {
  server = await testServer()
  shared = await testServer({ singleUser: false })
  for (const role of ROLES) tokens.set(role, await shared.tokenOf(role))
})
afterAll(async () => {
  await server.close()
  await shared.close()
})

const EVERYBODY: readonly (Role | null)[] = [null, ...ROLES]
const walk = Object.entries(ROUTES).flatMap(([name, route]) =>
  EVERYBODY.map((role) => ({ name, route, role })),
)

/** What the rules are meant to be, written down a second time by hand, so that a slip in the table shows. */
const MEANT: Readonly<Record<string, string>> = {
  health: 'public manager deputy crew committee',
  courses: 'manager deputy crew committee',
  addCourse: 'manager',
  pushEntries: 'manager deputy crew',
  pullEntries: 'manager deputy crew committee',
  live: 'manager deputy crew committee',
  calculations: 'public manager deputy crew committee',
  calculate: 'manager deputy crew committee',
  weather: 'manager deputy crew committee',
  chooseWeather: 'manager',
  history: 'manager deputy crew committee',
  uploadHistory: 'manager deputy',
  fetchHistory: 'manager deputy',
  who: 'public manager deputy crew committee',
  setUp: 'public manager deputy crew committee',
  logIn: 'public manager deputy crew committee',
  logOut: 'public manager deputy crew committee',
  changePassword: 'manager deputy crew committee',
  join: 'public manager deputy crew committee',
  people: 'manager deputy',
  addAccount: 'manager',
  addLink: 'manager deputy',
  endAccess: 'manager deputy',
  putBlob: 'manager deputy crew',
  getBlob: 'manager deputy crew committee',
  membersPage: 'manager deputy',
  openMembersPage: 'manager deputy',
  closeMembersPage: 'manager deputy',
  readMembersPage: 'public manager deputy crew committee',
  readMembersData: 'public manager deputy crew committee',
  openApi: 'public manager deputy crew committee',
}

/** A request that gets as far as the rule; a course that is not there keeps the stream from opening. */
const requestOf = (route: Route) => ({
  method: route.method,
  url: route.path
    .replace(':course', 'nowhere')
    .replace(':name', 'none')
    .replace(':sha256', 'f'.repeat(64))
    .replace(':key', 'A'.repeat(43))
    .replace(':id', 'f'.repeat(16)),
  ...(route.method === 'POST' ? { payload: {} } : {}),
})

describe('every route by every role', () => {
  it.each(walk)('$name as $role', async ({ name, route, role }) => {
    const headers = role === null ? {} : tokens.get(role)
    const { status, body } = await shared.ask({
      ...requestOf(route),
      ...(headers === undefined ? {} : { headers }),
    })
    const isMeant = MEANT[name]?.split(' ').includes(role ?? 'public')
    expect(isAllowed(route.rule, role)).toBe(isMeant)
    if (isMeant === true) expect([200, 400, 404, 409, 429]).toContain(status)
    else if (role === null) expect(body).toMatchObject({ error: { type: 'loginNeeded' } })
    else expect(body).toMatchObject({ error: { type: 'roleNotAllowed', role } })
    if (isMeant !== true) expect(status).toBe(role === null ? 401 : 403)
  })
})

describe('who is asking', () => {
  const courses = { url: '/api/courses' } as const

  it('is the manager at the machine itself, when the server listens there alone', async () => {
    expect((await server.ask(courses)).status).toBe(200)
    for (const host of ['127.0.0.1:8420', '[::1]:8420', 'localhost'])
      expect((await server.ask({ ...courses, headers: { host } })).status).toBe(200)
  })

  it.each([
    ['a name that points here from elsewhere', { headers: { host: 'evil.example:8420' } }],
    ['a proxy', { headers: { 'x-forwarded-for': '192.0.2.7' } }],
    ['another proxy', { headers: { forwarded: 'for=192.0.2.7' } }],
    ['another machine', { remoteAddress: '192.0.2.7' }],
  ])('is nobody through %s', async (_what, how) => {
    expect((await server.ask({ ...courses, ...how })).status).toBe(401)
  })

  it('is nobody without a token when others can reach the server', async () => {
    const { status, headers } = await shared.ask(courses)
    expect(status).toBe(401)
    expect(headers['www-authenticate']).toBe('Bearer')
  })

  it('is never quietly the manager when a token is sent that is not good', async () => {
    for (const authorization of ['Bearer swt_nothing', 'Bearer ', 'Basic YTpi', ''])
      expect(await server.ask({ ...courses, headers: { authorization } })).toMatchObject({
        status: 401,
        body: { error: { type: 'tokenUnknown' } },
      })
  })

  it('has the role of the token, also at the machine itself', async () => {
    const headers = await server.tokenOf('crew')
    const answer = await server.ask({ method: 'POST', url: '/api/courses', payload: { name: 'x' }, headers })
    expect(answer).toMatchObject({ status: 403, body: { error: { type: 'roleNotAllowed', role: 'crew' } } })
  })

  it('is nobody once the token is revoked', async () => {
    const headers = await shared.tokenOf('manager')
    expect((await shared.ask({ ...courses, headers })).status).toBe(200)
    const rows = await shared.storage.tokens.list()
    await shared.storage.tokens.revoke(rows.at(-1)?.id ?? '', '2026-08-10T07:00:00.000Z')
    expect((await shared.ask({ ...courses, headers })).status).toBe(401)
  })

  it('is known by the hash of the token, which is all that is kept', async () => {
    const { authorization = '' } = await shared.tokenOf('deputy')
    const token = authorization.replace('Bearer ', '')
    const rows = await shared.storage.tokens.list()
    expect(JSON.stringify(rows)).not.toContain(token)
    expect(rows.at(-1)?.hash).toBe(tokenHash(token))
    // NIST, SHA-256 example 'abc' (FIPS 180-2, appendix B.1).
    expect(tokenHash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })
})

describe('a page in a browser', () => {
  const add = (origin: string, host = 'localhost:8420') => ({
    method: 'POST' as const,
    url: '/api/courses',
    payload: { name: 'x' },
    headers: { origin, host },
  })

  it('of this server may change things, and of this machine when one person uses it', async () => {
    expect((await server.ask(add('http://localhost:8420'))).status).toBe(200)
    expect((await server.ask(add('http://localhost:5173'))).status).toBe(200)
  })

  it.each(['http://evil.example', 'https://localhost.evil.example', 'null', 'http://192.168.0.9:8420'])(
    'of %s may not',
    async (origin) => {
      expect(await server.ask(add(origin))).toMatchObject({
        status: 403,
        body: { error: { type: 'foreignOrigin', origin } },
      })
    },
  )

  it('of another place may not even with a good token', async () => {
    const headers = {
      ...(await shared.tokenOf('manager')),
      origin: 'http://localhost:5173',
      host: 'shed.example',
    }
    const answer = await shared.ask({ method: 'POST', url: '/api/courses', payload: { name: 'x' }, headers })
    expect(answer.status).toBe(403)
  })
})
