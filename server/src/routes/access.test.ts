import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Role } from '@swardwright/journal'
import { FAILURES_MAX, FORGOTTEN_AFTER_MS } from '../access/attempts.ts'
import { PASS_LASTS_S } from '../access/passes.ts'
import { hashPassword, isPassword } from '../access/passwords.ts'
import { isSetUpCode, newSetUpCode } from '../access/setUpCode.ts'
import { NOW_MS, noteEntry } from '../testing/entries.ts'
import { testServer, type TestServer } from '../testing/testServer.ts'

const CODE = 'K7MP-2WQX'
const PASSWORD = 'wet hollow front left'
/** Enough to tell passwords apart; what the usual cost is stands below. */
const CHEAP = { log2N: 4, r: 8, p: 1 }
const HOST = 'shed.example'

let nowMs = NOW_MS
let server: TestServer
beforeEach(async () => {
  nowMs = NOW_MS
  server = await testServer({ singleUser: false, setUpCode: CODE, clock: () => nowMs, passwordCost: CHEAP })
})
afterEach(() => server.close())

type Method = 'GET' | 'POST' | 'DELETE'
type Headers = Readonly<Record<string, string>>

/** A request as a browser elsewhere makes it. */
const ask = (method: Method, url: string, payload?: object, headers: Headers = {}) =>
  server.ask({
    method,
    url,
    ...(payload === undefined ? {} : { payload }),
    headers: { host: HOST, ...(method === 'GET' ? {} : { origin: `http://${HOST}` }), ...headers },
  })

/** The cookie that an answer set, as a browser sends it back. */
const cookieFrom = (answer: { readonly headers: Readonly<Record<string, unknown>> }): Headers => ({
  cookie: String(answer.headers['set-cookie']).split(';')[0] ?? '',
})

const setUp = async (): Promise<Headers> =>
  cookieFrom(await ask('POST', '/api/set-up', { code: CODE, name: 'Ada Birch', password: PASSWORD }))

const joined = async (manager: Headers, role: Role, name: string): Promise<Headers> => {
  const { body } = await ask('POST', '/api/access', { name, role }, manager)
  return cookieFrom(await ask('POST', '/api/join', { token: body['token'] }))
}

const who = async (headers: Headers = {}) => (await ask('GET', '/api/session', undefined, headers)).body
const push = (headers: Headers, entry: object, more: object = {}) =>
  ask('POST', '/api/courses/links/entries', { entries: [entry], ...more }, headers)

describe('the manager’s account', () => {
  it('is made once, with the code from the console, and logs in', async () => {
    expect(await who()).toEqual({ role: null, name: null, by: 'nobody', needsSetUp: true })
    const wrong = await ask('POST', '/api/set-up', { code: 'AAAA-AAAA', name: 'Eve', password: PASSWORD })
    expect(wrong).toMatchObject({ status: 403, body: { error: { type: 'wrongCode' } } })
    expect((await ask('POST', '/api/set-up', { name: 'Eve', password: PASSWORD })).status).toBe(403)
    const cookie = await setUp()
    expect(await who(cookie)).toEqual({
      role: 'manager',
      name: 'Ada Birch',
      by: 'session',
      needsSetUp: false,
    })
    const again = await ask('POST', '/api/set-up', { code: CODE, name: 'Eve', password: PASSWORD })
    expect(again).toMatchObject({ status: 409, body: { error: { type: 'alreadySetUp' } } })
  })

  it('needs a password of ten characters', async () => {
    const { status, body } = await ask('POST', '/api/set-up', {
      code: CODE,
      name: 'Ada',
      password: 'too short',
    })
    expect(status).toBe(400)
    expect(body).toMatchObject({ error: { field: 'password', expected: 'at least 10 characters' } })
  })

  it('ends the open door at the machine itself: from then on everybody logs in', async () => {
    const local = await testServer({ setUpCode: CODE, passwordCost: CHEAP })
    const courses = { url: '/api/courses' } as const
    expect((await local.ask(courses)).status).toBe(200)
    expect((await local.ask({ url: '/api/session' })).body).toMatchObject({ by: 'machine', role: 'manager' })
    const made = await local.ask({
      method: 'POST',
      url: '/api/set-up',
      payload: { name: 'Ada', password: PASSWORD },
    })
    expect(made.status).toBe(200)
    expect((await local.ask(courses)).status).toBe(401)
    expect((await local.ask({ ...courses, headers: cookieFrom(made) })).status).toBe(200)
    await local.close()
  })
})

describe('a cookie', () => {
  it('can’t be read by scripts and is not sent along by pages of others', async () => {
    const made = await ask('POST', '/api/set-up', { code: CODE, name: 'Ada', password: PASSWORD })
    const set = String(made.headers['set-cookie'])
    expect(set).toMatch(/^swardwright=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Max-Age=2592000$/u)
    expect(JSON.stringify(await server.storage.passes.list())).not.toContain(set.slice(12, 55))
  })

  it('is kept for https where the log-in came by https through a proxy of this machine', async () => {
    const made = await ask(
      'POST',
      '/api/set-up',
      { code: CODE, name: 'Ada', password: PASSWORD },
      {
        'x-forwarded-proto': 'https',
        'x-forwarded-for': '192.0.2.7',
        origin: `https://${HOST}`,
      },
    )
    expect(String(made.headers['set-cookie'])).toContain('; Secure')
  })

  it('lets nobody change anything without the page it comes from, or from a page of others', async () => {
    const cookie = await setUp()
    const add = { method: 'POST' as const, url: '/api/courses', payload: { name: 'x' } }
    const without = await server.ask({ ...add, headers: { host: HOST, ...cookie } })
    expect(without).toMatchObject({ status: 403, body: { error: { type: 'originMissing' } } })
    const foreign = await ask(
      'POST',
      '/api/courses',
      { name: 'x' },
      { ...cookie, origin: 'http://evil.example' },
    )
    expect(foreign).toMatchObject({ status: 403, body: { error: { type: 'foreignOrigin' } } })
    expect((await ask('POST', '/api/courses', { name: 'x' }, cookie)).status).toBe(200)
  })

  it('is good until it expires', async () => {
    const cookie = await setUp()
    nowMs += PASS_LASTS_S.session * 1000 - 1
    expect((await who(cookie))['by']).toBe('session')
    nowMs += 1
    expect((await who(cookie))['by']).toBe('nobody')
  })
})

describe('logging in', () => {
  it('takes name and password, the name in any case, and out again', async () => {
    await setUp()
    const cookie = cookieFrom(await ask('POST', '/api/session', { name: ' ada birch', password: PASSWORD }))
    expect(await who(cookie)).toMatchObject({ name: 'Ada Birch', role: 'manager' })
    expect((await ask('DELETE', '/api/session', undefined, cookie)).body).toEqual({ ended: true })
    expect((await who(cookie))['by']).toBe('nobody')
  })

  it('tells a wrong name and a wrong password alike', async () => {
    await setUp()
    const tries = [
      { name: 'Ada Birch', password: 'something else' },
      { name: 'Nobody', password: PASSWORD },
    ]
    for (const body of tries)
      expect(await ask('POST', '/api/session', body)).toMatchObject({
        status: 403,
        body: { error: { type: 'wrongPassword' } },
      })
  })

  it('stops guessing for a while, whatever address it comes from', { timeout: 60_000 }, async () => {
    await setUp()
    const guess = (password: string, n: number) =>
      server.ask({
        method: 'POST',
        url: '/api/session',
        payload: { name: 'Ada Birch', password },
        remoteAddress: `192.0.2.${n}`,
        headers: { host: HOST, origin: `http://${HOST}` },
      })
    for (let n = 0; n < FAILURES_MAX; n += 1) expect((await guess('guess', n)).status).toBe(403)
    expect(await guess(PASSWORD, 99)).toMatchObject({
      status: 429,
      body: { error: { message: 'too many wrong guesses; wait 15 minutes, then try again' } },
    })
    nowMs += FORGOTTEN_AFTER_MS
    expect((await guess(PASSWORD, 99)).status).toBe(200)
  })

  it('changes the password, which ends the other log-ins', async () => {
    const old = await setUp()
    const other = cookieFrom(await ask('POST', '/api/session', { name: 'Ada Birch', password: PASSWORD }))
    const next = 'dry hollow front left'
    const wrong = await ask('POST', '/api/session/password', { old: 'nothing', new: next }, old)
    expect(wrong.status).toBe(403)
    const changed = await ask('POST', '/api/session/password', { old: PASSWORD, new: next }, old)
    expect((await who(cookieFrom(changed)))['name']).toBe('Ada Birch')
    for (const cookie of [old, other]) expect((await who(cookie))['by']).toBe('nobody')
    expect((await ask('POST', '/api/session', { name: 'Ada Birch', password: PASSWORD })).status).toBe(403)
  })
})

describe('a join link', () => {
  it('lets one device in, once, until it is revoked', async () => {
    const manager = await setUp()
    const { body } = await ask('POST', '/api/access', { name: 'Ben Ash', role: 'crew' }, manager)
    const first = await ask('POST', '/api/join', { token: body['token'] })
    const phone = cookieFrom(first)
    expect(await who(phone)).toMatchObject({ role: 'crew', name: 'Ben Ash', by: 'device' })
    const second = await ask('POST', '/api/join', { token: body['token'] })
    expect(second).toMatchObject({ status: 410, body: { error: { type: 'linkUnknown' } } })
    const listed = (await ask('GET', '/api/access', undefined, manager)).body
    expect(listed).toMatchObject({ links: [], devices: [{ name: 'Ben Ash', role: 'crew' }] })
    const [device] = listed['devices'] as readonly { readonly id: string }[]
    expect((await ask('DELETE', `/api/access/${device?.id}`, undefined, manager)).body).toEqual({
      ended: true,
    })
    expect((await who(phone))['by']).toBe('nobody')
    expect((await ask('DELETE', `/api/access/${device?.id}`, undefined, manager)).status).toBe(404)
  })

  it('ends after a week, and when it is taken back', async () => {
    const manager = await setUp()
    const make = async () => (await ask('POST', '/api/access', { name: 'Ben', role: 'crew' }, manager)).body
    const late = await make()
    nowMs += PASS_LASTS_S.invite * 1000
    expect((await ask('POST', '/api/join', { token: late['token'] })).status).toBe(410)
    const back = await make()
    await ask('DELETE', `/api/access/${String(back['id'])}`, undefined, manager)
    expect((await ask('POST', '/api/join', { token: back['token'] })).status).toBe(410)
  })

  it('is no pass by itself', async () => {
    const manager = await setUp()
    const { body } = await ask('POST', '/api/access', { name: 'Ben', role: 'crew' }, manager)
    expect((await who({ cookie: `swardwright=${String(body['token'])}` }))['by']).toBe('nobody')
  })
})

describe('a device that joined one course', () => {
  const joinedTo = async (manager: Headers, role: Role, course: string): Promise<Headers> => {
    const made = await ask('POST', '/api/access', { name: 'Ben Ash', role, course }, manager)
    expect(made.status).toBe(200)
    return cookieFrom(await ask('POST', '/api/join', { token: made.body['token'] }))
  }

  it('sees that one only: others are not in the list and answer as if they were not there', async () => {
    await server.storage.journal.addCourse({ id: 'park', name: 'Park' })
    const manager = await setUp()
    const phone = await joinedTo(manager, 'crew', 'links')
    const listed = await ask('GET', '/api/courses', undefined, phone)
    expect(JSON.parse(listed.text)).toEqual([{ id: 'links', name: 'Links' }])
    expect((await push(phone, { ...noteEntry(1), author: 'Ben Ash' })).body).toMatchObject({ refused: [] })
    const nowhere = await ask('GET', '/api/courses/nowhere/entries', undefined, phone)
    for (const [method, path, payload] of [
      ['GET', 'entries', undefined],
      ['GET', 'live', undefined],
      ['GET', 'weather', undefined],
      ['GET', `blobs/${'f'.repeat(64)}`, undefined],
      ['POST', 'entries', { entries: [] }],
    ] as const) {
      const answer = await ask(method, `/api/courses/park/${path}`, payload, phone)
      expect(answer.status).toBe(404)
      expect(answer.text).toBe(nowhere.text.replaceAll('nowhere', 'park'))
    }
  })

  it('deals with the access of its own course only, as a deputy', async () => {
    await server.storage.journal.addCourse({ id: 'park', name: 'Park' })
    const manager = await setUp()
    const deputy = await joinedTo(manager, 'deputy', 'links')
    const other = await ask('POST', '/api/access', { name: 'x', role: 'crew', course: 'park' }, manager)
    expect(
      await ask('POST', '/api/access', { name: 'y', role: 'crew', course: 'park' }, deputy),
    ).toMatchObject({
      status: 403,
      body: { error: { type: 'oneCourseOnly' } },
    })
    expect((await ask('POST', '/api/access', { name: 'y', role: 'crew' }, deputy)).status).toBe(200)
    const people = (await ask('GET', '/api/access', undefined, deputy)).body
    expect(people).toMatchObject({ accounts: [], links: [{ name: 'y', course: 'links' }] })
    expect((await ask('DELETE', `/api/access/${String(other.body['id'])}`, undefined, deputy)).status).toBe(
      404,
    )
    expect((await ask('POST', '/api/courses', { name: 'z' }, deputy)).status).toBe(403)
  })

  it('stands in the record of that course and of no other', async () => {
    await server.storage.journal.addCourse({ id: 'park', name: 'Park' })
    const manager = await setUp()
    await joinedTo(manager, 'crew', 'links')
    const changes = async (course: string) => {
      const { body } = await ask('GET', `/api/courses/${course}/entries`, undefined, manager)
      return (body['entries'] as readonly { body: { change: string } }[]).map((entry) => entry.body.change)
    }
    expect(await changes('links')).toEqual(['managerSetUp', 'joinLinkMade', 'deviceJoined'])
    expect(await changes('park')).toEqual(['managerSetUp'])
  })

  it('can’t be let in to a course that is not there', async () => {
    const manager = await setUp()
    const made = await ask('POST', '/api/access', { name: 'x', role: 'crew', course: 'nowhere' }, manager)
    expect(made).toMatchObject({ status: 404, body: { error: { type: 'courseUnknown' } } })
  })
})

describe('a deputy', () => {
  it('lets crew and committee in and out, and nobody above', async () => {
    const manager = await setUp()
    const deputy = await joined(manager, 'deputy', 'Dora Elm')
    for (const role of ['crew', 'committee'])
      expect((await ask('POST', '/api/access', { name: 'x', role }, deputy)).status).toBe(200)
    for (const role of ['deputy', 'manager'])
      expect(await ask('POST', '/api/access', { name: 'x', role }, deputy)).toMatchObject({
        status: 403,
        body: { error: { type: 'notYours', role } },
      })
    const { accounts } = (await ask('GET', '/api/access', undefined, deputy)).body
    const [{ id } = { id: '' }] = accounts as readonly { readonly id: string }[]
    expect((await ask('DELETE', `/api/access/${id}`, undefined, deputy)).status).toBe(403)
  })
})

describe('accounts', () => {
  it('are made by a manager, one a name, and ended with their log-ins', async () => {
    const manager = await setUp()
    const account = { name: 'Cora Oak', role: 'committee', password: PASSWORD }
    const made = await ask('POST', '/api/accounts', account, manager)
    expect(made.status).toBe(200)
    expect(await ask('POST', '/api/accounts', account, manager)).toMatchObject({
      status: 409,
      body: { error: { type: 'nameTaken' } },
    })
    const reader = cookieFrom(await ask('POST', '/api/session', account))
    expect((await push(reader, noteEntry(1))).status).toBe(403)
    expect((await ask('GET', '/api/courses/links/entries', undefined, reader)).status).toBe(200)
    await ask('DELETE', `/api/access/${String(made.body['id'])}`, undefined, manager)
    expect((await who(reader))['by']).toBe('nobody')
  })

  it('keep one manager', async () => {
    const manager = await setUp()
    const { accounts } = (await ask('GET', '/api/access', undefined, manager)).body
    const [{ id } = { id: '' }] = accounts as readonly { readonly id: string }[]
    expect(await ask('DELETE', `/api/access/${id}`, undefined, manager)).toMatchObject({
      status: 409,
      body: { error: { type: 'lastManager' } },
    })
  })
})

describe('the author of an entry', () => {
  const by = (number: number, author: string) => ({ ...noteEntry(number), author })

  it('[J30] is the person or device that sends it, and nobody else', async () => {
    const manager = await setUp()
    const phone = await joined(manager, 'crew', 'Ben Ash')
    expect((await push(phone, by(1, 'Ben Ash'))).body).toMatchObject({ refused: [] })
    expect((await push(phone, by(2, 'Ada Birch'))).body).toMatchObject({
      accepted: [],
      refused: [{ why: 'not-allowed', field: 'author', expected: 'Ben Ash' }],
    })
    expect((await push(manager, by(3, 'Ben Ash'))).body).toMatchObject({ accepted: [] })
  })

  it('[J30] may be another when those who decide hand entries on, never when the crew do', async () => {
    const manager = await setUp()
    const phone = await joined(manager, 'crew', 'Ben Ash')
    const handedOn = { handedOn: true }
    expect((await push(manager, by(3, 'Ben Ash'), handedOn)).body).toMatchObject({ refused: [] })
    expect((await push(phone, by(4, 'Ada Birch'), handedOn)).body).toMatchObject({ accepted: [] })
  })

  it('[J30] may be anybody in the mouth of a script, but for those who are here themselves', async () => {
    await setUp()
    const script = await server.tokenOf('crew')
    expect((await push(script, by(1, 'somebody'))).body).toMatchObject({ refused: [] })
    expect((await push(script, by(2, 'ada birch'))).body).toMatchObject({
      refused: [{ why: 'not-allowed', field: 'author' }],
    })
  })
})

describe('the record of access', () => {
  it('[J31] stands in the journal: who came, who let them in, who left', async () => {
    const manager = await setUp()
    await joined(manager, 'crew', 'Ben Ash')
    const { body } = await ask('GET', '/api/courses/links/entries', undefined, manager)
    const entries = body['entries'] as readonly { author: string; kind: string; body: { change: string } }[]
    expect(entries.map((entry) => [entry.kind, entry.author, entry.body.change])).toEqual([
      ['accessChanged', 'Ada Birch', 'managerSetUp'],
      ['accessChanged', 'Ada Birch', 'joinLinkMade'],
      ['accessChanged', 'Ben Ash', 'deviceJoined'],
    ])
  })
})

describe('secrets', () => {
  it('of accounts are hashed with a salt of their own', async () => {
    const [one, two] = [await hashPassword(PASSWORD), await hashPassword(PASSWORD)]
    expect(one).not.toBe(two)
    expect(one).toMatch(/^scrypt\$15\$8\$3\$/u)
    expect(await isPassword(PASSWORD, one)).toBe(true)
    expect(await isPassword(`${PASSWORD} `, one)).toBe(false)
    await expect(isPassword(PASSWORD, 'plain')).rejects.toThrow('damaged')
  })

  it('of accounts are checked as RFC 7914 says', async () => {
    // RFC 7914, section 12, third vector: scrypt("pleaseletmein", "SodiumChloride", N=16384, r=8, p=1), first 32 bytes.
    const key = Buffer.from('7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2', 'hex')
    const salt = Buffer.from('SodiumChloride').toString('base64url')
    expect(await isPassword('pleaseletmein', `scrypt$14$8$1$${salt}$${key.toString('base64url')}`)).toBe(true)
  })

  it('for setting up are read with or without dash and case, and are never empty', () => {
    const code = newSetUpCode()
    expect(code).toMatch(/^[A-HJ-NP-Z2-9]{4}-[A-HJ-NP-Z2-9]{4}$/u)
    expect(isSetUpCode(code.toLowerCase().replace('-', ' '), code)).toBe(true)
    expect(isSetUpCode('', code)).toBe(false)
    expect(isSetUpCode('', null)).toBe(false)
  })
})
