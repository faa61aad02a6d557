import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { makePlan, randomCourse } from '@swardwright/engine'
import { KINDS, momentFromMs, type BodyOf, type Entry, type KindName } from '@swardwright/journal'
import { plantDemoAs } from '../demo.ts'
import { NOW_MS, idOf } from '../testing/entries.ts'
import { testServer, type TestServer } from '../testing/testServer.ts'

const HOST = 'shed.example'
const PAGE = '/api/courses/links/members-page'

let nowMs = NOW_MS
let server: TestServer
let manager: Readonly<Record<string, string>>
beforeEach(async () => {
  nowMs = NOW_MS
  server = await testServer({ singleUser: false, clock: () => nowMs })
  manager = await server.tokenOf('manager')
  await plantDemoAs(server.storage, { id: 'links', name: 'Links' }, NOW_MS - 600_000)
})
afterEach(() => server.close())

let entryNumber = 0
const record = async <K extends KindName>(kind: K, body: BodyOf<K>, author = 'manager'): Promise<void> => {
  entryNumber += 1
  const at = momentFromMs(nowMs)
  const entry: Entry = {
    id: idOf(entryNumber),
    course: 'links',
    device: 'test',
    author,
    at,
    recordedAt: at,
    kind,
    version: KINDS[kind].version,
    body: { ...body },
  }
  const { body: answer } = await server.ask({
    method: 'POST',
    url: '/api/courses/links/entries',
    payload: { entries: [entry] },
    headers: manager,
  })
  expect(answer).toMatchObject({ refused: [] })
}

const open = async (): Promise<{ readonly key: string; readonly id: string }> => {
  const { status, body } = await server.ask({ method: 'POST', url: PAGE, headers: manager })
  expect(status).toBe(200)
  return { key: String(body['key']), id: String(body['id']) }
}

const read = (key: string, headers: Readonly<Record<string, string>> = {}) =>
  server.ask({ url: `/greens/${key}`, headers: { host: HOST, ...headers } })

describe('the members’ page', () => {
  it('is read by whoever has its address, which has 256 bits of chance and is kept as a hash', async () => {
    expect((await server.ask({ url: PAGE, headers: manager })).body).toEqual({ page: null })
    const { key, id } = await open()
    // 32 bytes in base64url without padding are 43 characters.
    expect(key).toMatch(/^[\w-]{43}$/u)
    expect(JSON.stringify(await server.storage.passes.list())).not.toContain(key)
    expect((await server.ask({ url: PAGE, headers: manager })).body).toMatchObject({ page: { id } })
    const { status, headers, text } = await read(key)
    expect(status).toBe(200)
    expect(headers['content-type']).toBe('text/html; charset=utf-8')
    expect(text).toContain('<h1>The greens</h1>')
    expect(text).toContain('Links')
  })

  it('has no script, loads nothing, is kept out of search engines and tells other sites nothing', async () => {
    const { key } = await open()
    const { headers, text } = await read(key)
    expect(text).not.toMatch(/<script|<link|<img|<iframe|javascript:|https?:(?!\/\/shed)/iu)
    const policy = String(headers['content-security-policy'])
    expect(policy).toMatch(/^default-src 'none'; style-src 'sha256-[\w+/]{43}='; /u)
    expect(headers['referrer-policy']).toBe('no-referrer')
    expect(headers['x-robots-tag']).toContain('noindex')
    expect(text).toContain('<meta name="robots" content="noindex,nofollow">')
    expect(headers['set-cookie']).toBeUndefined()
    // A page of a few packets, on the poorest line.
    expect(text.length).toBeLessThan(40_000)
  })

  it('is kept by a browser for a minute, and then sent again only if something has changed', async () => {
    const { key } = await open()
    const first = await read(key)
    expect(first.headers['cache-control']).toBe('private, max-age=60, must-revalidate')
    const etag = String(first.headers['etag'])
    const again = await read(key, { 'if-none-match': etag })
    expect([again.status, again.text]).toEqual([304, ''])
    await record('playChanged', { green: 'g03', play: 'onTemporary' })
    const changed = await read(key, { 'if-none-match': etag })
    expect(changed.status).toBe(200)
    expect(changed.text).toContain('Temporary green')
  })

  it('moves to a new address by one touch, and the old one leads nowhere', async () => {
    const old = await open()
    const fresh = await open()
    expect(fresh.key).not.toBe(old.key)
    expect((await read(old.key)).status).toBe(404)
    expect((await read(fresh.key)).status).toBe(200)
    expect((await server.ask({ method: 'DELETE', url: PAGE, headers: manager })).body).toEqual({
      ended: true,
    })
    expect((await server.ask({ method: 'DELETE', url: PAGE, headers: manager })).body).toEqual({
      ended: false,
    })
    expect((await read(fresh.key)).status).toBe(404)
  })

  it('tells an address taken back, one never given and a mangled one in exactly the same way', async () => {
    const { key } = await open()
    await server.ask({ method: 'DELETE', url: PAGE, headers: manager })
    const without = async (url: string) => {
      const { status, text, headers } = await server.ask({ url })
      const { date: _date, 'x-ratelimit-remaining': _left, 'x-ratelimit-reset': _reset, ...rest } = headers
      return { status, text, rest }
    }
    const first = await without(`/greens/${key}`)
    expect(first.status).toBe(404)
    expect(first.rest['cache-control']).toBe('no-store')
    for (const other of ['A'.repeat(43), 'x', '%20', 'links', 'a'.repeat(99)])
      expect(await without(`/greens/${other}`)).toEqual(first)
    const data = await without(`/greens/${key}.json`)
    expect(data.status).toBe(404)
    expect(await without(`/greens/${'B'.repeat(43)}.json`)).toEqual(data)
  })

  it('is no way in: its key is no cookie, no join link and no access to end', async () => {
    const { key, id } = await open()
    const session = await server.ask({ url: '/api/session', headers: { cookie: `swardwright=${key}` } })
    expect(session.body).toMatchObject({ role: null, by: 'nobody' })
    const joined = await server.ask({ method: 'POST', url: '/api/join', payload: { token: key } })
    expect(joined.status).toBe(410)
    expect((await server.ask({ method: 'DELETE', url: `/api/access/${id}`, headers: manager })).status).toBe(
      404,
    )
  })

  it('stands in the record of its own course and no other: opened, closed, opened anew', async () => {
    await server.storage.journal.addCourse({ id: 'park', name: 'Park' })
    const first = await open()
    const second = await open()
    await server.ask({ method: 'DELETE', url: PAGE, headers: manager })
    const changes = async (course: string) => {
      const { body } = await server.ask({ url: `/api/courses/${course}/entries`, headers: manager })
      const entries = body['entries'] as readonly {
        kind: string
        author: string
        body: { change: string; access: string }
      }[]
      return entries
        .filter(({ kind }) => kind === 'accessChanged')
        .map(({ author, body: { change, access } }) => [author, change, access])
    }
    expect(await changes('links')).toEqual([
      ['manager', 'membersPageOpened', first.id],
      ['manager', 'membersPageClosed', first.id],
      ['manager', 'membersPageOpened', second.id],
      ['manager', 'membersPageClosed', second.id],
    ])
    expect(await changes('park')).toEqual([])
  })

  it('is slowed down for an address that asks more than 120 times a minute', async () => {
    for (let count = 0; count < 120; count += 1)
      expect((await server.ask({ url: `/greens/guess${count}` })).status).toBe(404)
    expect((await server.ask({ url: '/greens/guess' })).status).toBe(429)
  })

  it('is told as data too, for a club’s own site', async () => {
    const { key } = await open()
    const { status, body, headers } = await server.ask({ url: `/greens/${key}.json` })
    expect(status).toBe(200)
    expect(headers['access-control-allow-origin']).toBe('*')
    expect(body).toMatchObject({ course: 'Links', headline: 'All greens are in play.' })
    expect(body['greens']).toHaveLength(19)
    const etag = String(headers['etag'])
    expect(
      (await server.ask({ url: `/greens/${key}.json`, headers: { 'if-none-match': etag } })).status,
    ).toBe(304)
  })

  it('shows nobody of the crew, nothing of stores, problems or notes, whatever the course', async () => {
    let plans = 0
    for (let seed = 1; seed <= 12; seed += 1) {
      const { course: made, ...rest } = randomCourse({ seed, greens: 2 + (seed % 4), weather: 'dry' })
      const people = made.people.map((person, n) => ({ ...person, name: `Zephyrine${n} Quillfeather` }))
      const value = { ...made, people, now: null }
      const author = people[0]?.name
      await record('courseChanged', { changes: [{ part: 'course', do: 'put', value }] }, author)
      const planned = makePlan({ ...rest, course: value, courseHash: 'h', days: 4, schedules: 5 })
      if (planned.ok) await record('planSettled', { plan: planned.value }, author)
      plans += planned.ok ? 1 : 0
      await record('noteWritten', { words: 'Ring Quillfeather on 07700 900123' })
      await record('problemReported', { problem: 'other', words: 'Call 07700 900123, sand short' })
      const { key } = await open()
      for (const url of [`/greens/${key}`, `/greens/${key}.json`]) {
        const { status, text } = await server.ask({ url })
        expect(status).toBe(200)
        // The page was made, and of this course.
        expect(text).toContain(value.name.slice(0, 6))
        expect(text).not.toMatch(/Zephyrine|Quillfeather|900123|risk|chance/u)
        for (const { name } of value.machines) expect(text).not.toContain(`>${name}<`)
      }
    }
    expect(plans).toBeGreaterThan(6)
  })
})

describe('a course without greens', () => {
  it('has nothing to show at the address of its page', async () => {
    await server.storage.journal.addCourse({ id: 'empty', name: 'Empty' })
    const url = '/api/courses/empty/members-page'
    const { body } = await server.ask({ method: 'POST', url, headers: manager })
    expect((await read(String(body['key']))).status).toBe(404)
  })
})
