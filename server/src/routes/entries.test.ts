import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import * as fc from 'fast-check'
import { fold, initialState, type Entry, type PushAnswer, type RouteOutput } from '@swardwright/journal'
import { NOW_MS, exampleEntry, idOf, noteEntry } from '../testing/entries.ts'
import { testServer, type TestServer } from '../testing/testServer.ts'

let server: TestServer
beforeEach(async () => {
  server = await testServer()
})
afterEach(() => server.close())

const ENTRIES = '/api/courses/links/entries'

const push = async (
  entries: readonly unknown[],
  headers: Readonly<Record<string, string>> = {},
): Promise<PushAnswer> => {
  const { status, text } = await server.ask({ method: 'POST', url: ENTRIES, payload: { entries }, headers })
  expect(status).toBe(200)
  return JSON.parse(text)
}
const pull = async (query = ''): Promise<RouteOutput<'pullEntries'>> => {
  const { status, text } = await server.ask({ url: `${ENTRIES}${query}` })
  expect(status).toBe(200)
  return JSON.parse(text)
}
const notes = (from: number, to: number): readonly Entry[] =>
  Array.from({ length: to - from + 1 }, (_, index) => noteEntry(from + index))

describe('pushing entries', () => {
  it('[J20] accepts good ones and tells the end of the journal', async () => {
    expect(await push(notes(1, 3))).toEqual({
      accepted: [idOf(1), idOf(2), idOf(3)],
      refused: [],
      cursor: `3.${idOf(3)}.${NOW_MS}`,
    })
  })

  it('[J20] judges each entry on its own', async () => {
    const late = { ...noteEntry(2), at: new Date(NOW_MS + 90_000_000).toISOString() }
    const wordless = { ...noteEntry(3), body: {} }
    const long = noteEntry(4, 'x'.repeat(1_000_001))
    const { accepted, refused } = await push([
      noteEntry(1),
      late,
      wordless,
      long,
      { id: 'mine' },
      noteEntry(5),
    ])
    expect(accepted).toEqual([idOf(1), idOf(5)])
    expect(refused).toMatchObject([
      { id: idOf(2), why: 'clock', field: 'at' },
      { id: idOf(3), why: 'bad-body', field: 'body.words', expected: 'present' },
      { id: idOf(4), why: 'too-large', field: 'entry' },
      { id: 'mine', why: 'bad-body', field: 'id', expected: 'a UUID of version 7 in lower case' },
    ])
    expect((await pull()).entries.map((entry) => entry.id)).toEqual([idOf(1), idOf(5)])
  })

  it('[J20] takes what is good beside entries that have no id, and tells those by their place', async () => {
    const nameless = [{ kind: 'noteWritten' }, null, 7, { ...noteEntry(2), id: null }]
    expect(await push([...nameless, noteEntry(1)])).toMatchObject({
      accepted: [idOf(1)],
      refused: [
        { id: '', why: 'bad-body', field: 'entries.0.id' },
        { id: '', why: 'bad-body', field: 'entries.1', expected: 'an object' },
        { id: '', why: 'bad-body', field: 'entries.2', expected: 'an object' },
        { id: '', why: 'bad-body', field: 'entries.3.id' },
      ],
    })
  })

  it('[J25] accepts an entry again and stores it once', async () => {
    await push(notes(1, 2))
    const pulled = await pull()
    expect(await push([...notes(2, 3), ...pulled.entries])).toMatchObject({
      accepted: [idOf(2), idOf(3), idOf(1), idOf(2)],
      refused: [],
    })
    expect((await pull()).entries.map((entry) => entry.seq)).toEqual([1, 2, 3])
  })

  it('[J25] refuses another entry under a known id, so that nothing is confirmed that was not kept', async () => {
    await push([noteEntry(1)])
    expect(await push([noteEntry(1, 'another')])).toMatchObject({
      accepted: [],
      refused: [{ id: idOf(1), why: 'bad-body', field: 'id' }],
    })
  })

  it('[J9] keeps a kind that it does not know', async () => {
    const unknown = { ...noteEntry(1), kind: 'droneFlown', body: { heightM: 20 } }
    await push([unknown])
    expect((await pull()).entries[0]).toMatchObject(unknown)
  })

  it('takes an empty push, which tells the end of the journal', async () => {
    expect(await push([])).toEqual({ accepted: [], refused: [], cursor: '0' })
  })

  it.each([
    ['no list', { entries: 'x' }],
    ['more than a thousand entries', { entries: notes(1, 1001) }],
    ['nothing', null],
  ])('answers a push of %s with 400', async (_what, payload) => {
    const { status, body } = await server.ask({
      method: 'POST',
      url: ENTRIES,
      headers: { 'content-type': 'application/json' },
      payload: JSON.stringify(payload),
    })
    expect(status).toBe(400)
    expect(body).toMatchObject({ error: { type: 'badRequest', where: 'body' } })
  })

  it('renames the course in the list by the latest change', async () => {
    const rename = (number: number, name: string): Entry => ({
      ...exampleEntry('courseChanged', number),
      body: { changes: [{ part: 'facts', do: 'set', fields: { name } }] },
    })
    await push([rename(2, 'Later')])
    await push([rename(1, 'Earlier')])
    expect((await server.ask({ url: '/api/courses' })).text).toBe('[{"id":"links","name":"Later"}]')
  })
})

describe('pushing as crew', () => {
  const struck = (number: number, target: number): Entry => ({
    ...exampleEntry('struck', number),
    body: { entry: idOf(target), reason: 'wrong green' },
  })

  it('[J22] records work, and refuses what the manager settles', async () => {
    const crew = await server.tokenOf('crew')
    const answer = await push(
      [exampleEntry('greenFinished', 1), exampleEntry('prescriptionSettled', 2)],
      crew,
    )
    expect(answer).toMatchObject({ accepted: [idOf(1)], refused: [{ id: idOf(2), why: 'not-allowed' }] })
  })

  it('[J22] strikes out what came from itself, in the same push or later', async () => {
    const crew = await server.tokenOf('crew')
    expect((await push([noteEntry(1), noteEntry(2), struck(3, 1)], crew)).refused).toEqual([])
    expect((await push([struck(4, 2)], crew)).refused).toEqual([])
  })

  it('[J22] never strikes out what somebody else sent, even if it sends that again itself', async () => {
    await push([noteEntry(1)])
    const crew = await server.tokenOf('crew')
    const refused = [{ id: idOf(2), why: 'not-allowed' }]
    expect(await push([struck(2, 1)], crew)).toMatchObject({ accepted: [], refused })
    expect(await push([noteEntry(1), struck(2, 1)], crew)).toMatchObject({ accepted: [idOf(1)], refused })
    expect(await push([struck(3, 77)], crew)).toMatchObject({
      refused: [{ id: idOf(3), why: 'not-allowed' }],
    })
    expect((await push([struck(2, 1)])).accepted).toEqual([idOf(2)])
  })
})

describe('pulling entries', () => {
  it('[J27] pages from the beginning to the end', async () => {
    await push(notes(1, 5))
    const first = await pull('?limit=2')
    expect(first).toMatchObject({ cursor: `2.${idOf(2)}.${NOW_MS}`, more: true, reset: false })
    expect(first.entries.map((entry) => entry.seq)).toEqual([1, 2])
    const second = await pull(`?limit=3&after=${first.cursor}`)
    expect(second).toMatchObject({ cursor: `5.${idOf(5)}.${NOW_MS}`, more: false })
    expect(await pull(`?after=${second.cursor}`)).toEqual({
      entries: [],
      cursor: second.cursor,
      more: false,
      reset: false,
    })
  })

  it('gives an empty journal', async () => {
    expect(await pull()).toEqual({ entries: [], cursor: '0', more: false, reset: false })
  })

  it('gives entries as they were sent, with number and time of arrival', async () => {
    const sent = noteEntry(1)
    await push([sent])
    expect((await pull()).entries).toEqual([{ ...sent, seq: 1, receivedAt: '2026-08-10T06:00:00.000Z' }])
  })

  it.each(['after=12', 'after=', 'after=x', 'limit=0', 'limit=1001', 'limit=2.5', 'limit=-1', 'limit=all'])(
    'answers ?%s with 400',
    async (query) => {
      const { status, body } = await server.ask({ url: `${ENTRIES}?${query}` })
      expect(status).toBe(400)
      expect(body).toMatchObject({
        error: { type: 'badRequest', where: 'query', field: query.split('=')[0] },
      })
    },
  )

  it('[J27] gives every entry once while others push', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 1, max: 5 }),
        async (sizes, limit) => {
          const own = await testServer()
          const read: string[] = []
          let next = 1
          let cursor = '0'
          for (const size of sizes) {
            const entries = notes(next, next + size - 1)
            next += size
            await own.ask({ method: 'POST', url: ENTRIES, payload: { entries } })
            const { text } = await own.ask({ url: `${ENTRIES}?after=${cursor}&limit=${limit}` })
            const page: RouteOutput<'pullEntries'> = JSON.parse(text)
            read.push(...page.entries.map((entry) => entry.id))
            cursor = page.cursor
          }
          const { text } = await own.ask({ url: `${ENTRIES}?after=${cursor}&limit=1000` })
          const rest: RouteOutput<'pullEntries'> = JSON.parse(text)
          read.push(...rest.entries.map((entry) => entry.id))
          expect(read).toEqual(notes(1, next - 1).map((entry) => entry.id))
          await own.close()
        },
      ),
      { seed: 7, numRuns: 15 },
    )
  })
})

describe('a server put back from a backup', () => {
  it('[J28] starts a reader again, who pushes what it has: nothing is lost or doubled', async () => {
    await push(notes(1, 4))
    const phone = await pull()
    const restored = await testServer()
    await restored.ask({ method: 'POST', url: ENTRIES, payload: { entries: notes(1, 2) } })
    await restored.ask({ method: 'POST', url: ENTRIES, payload: { entries: [noteEntry(7), noteEntry(8)] } })
    const { text } = await restored.ask({ url: `${ENTRIES}?after=${phone.cursor}` })
    const again: RouteOutput<'pullEntries'> = JSON.parse(text)
    expect(again.reset).toBe(true)
    expect(again.entries.map((entry) => entry.id)).toEqual([idOf(1), idOf(2), idOf(7), idOf(8)])
    await restored.ask({ method: 'POST', url: ENTRIES, payload: { entries: phone.entries } })
    const whole: RouteOutput<'pullEntries'> = JSON.parse((await restored.ask({ url: ENTRIES })).text)
    expect(whole.entries.map((entry) => entry.id)).toEqual([1, 2, 7, 8, 3, 4].map((number) => idOf(number)))
    const onPhone = fold(fold(initialState, phone.entries), again.entries)
    expect(onPhone.facts).toEqual(fold(initialState, whole.entries).facts)
    await restored.close()
  })

  it('[J28] tells a device that had not read back what it sent: by the furthest cursor that it saw', async () => {
    const { cursor } = await push(notes(1, 3))
    const lost = await testServer()
    await lost.ask({ method: 'POST', url: ENTRIES, payload: { entries: notes(1, 2) } })
    const ask = async (query: string) => (await lost.ask({ url: `${ENTRIES}${query}` })).body
    expect((await ask(`?after=1.${idOf(1)}`))['reset']).toBe(false)
    expect((await ask(`?after=1.${idOf(1)}&seen=${cursor}`))['reset']).toBe(true)
    // Others have pushed meanwhile, so there is a number 3 again, and it is another entry.
    await lost.ask({ method: 'POST', url: ENTRIES, payload: { entries: notes(7, 9) } })
    expect((await ask(`?after=1.${idOf(1)}&seen=${cursor}`))['reset']).toBe(true)
    expect(await ask('?seen=here')).toMatchObject({ error: { field: 'seen' } })
    await lost.close()
  })

  it('[J28] starts a reader again whose last entry was sent anew and lies under its old number, behind others than before', async () => {
    await push(notes(1, 2))
    const resetAt = async (ms: number) => (await pull(`?after=2.${idOf(2)}.${ms}`)).reset
    expect(await resetAt(NOW_MS)).toBe(false)
    expect(await resetAt(NOW_MS - 60_000)).toBe(true)
    // A cursor of an older server does not tell the moment.
    expect((await pull(`?after=2.${idOf(2)}`)).reset).toBe(false)
  })

  it('[J28] that lost everything starts a reader again too', async () => {
    expect(await pull(`?after=9.${idOf(9)}`)).toEqual({ entries: [], cursor: '0', more: false, reset: true })
  })
})

describe('the clock of a device', () => {
  const send = async (aheadMs: number): Promise<PushAnswer> => {
    const sentAt = new Date(NOW_MS + aheadMs).toISOString()
    const { text } = await server.ask({
      method: 'POST',
      url: ENTRIES,
      payload: { entries: [noteEntry(1)], sentAt },
    })
    return JSON.parse(text)
  }

  it('[J21] is noted beside what it sent, ahead or behind', async () => {
    await send(-90_000)
    expect((await pull()).entries[0]?.skewMs).toBe(-90_000)
  })

  it('[J21] is not noted where it was not told', async () => {
    await push([noteEntry(1)])
    expect((await pull()).entries[0]).not.toHaveProperty('skewMs')
  })

  it.each([1, -1])('[J21] that is off by more than a day either way sends nothing (%i)', async (sign) => {
    expect((await send(sign * 86_400_000)).refused).toEqual([])
    const { refused } = await send(sign * 86_400_001)
    expect(refused).toMatchObject([{ id: idOf(1), why: 'clock', field: 'sentAt' }])
  })
})
