import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createPass } from '../access/passes.ts'
import { NOW_MS, idOf, noteEntry } from '../testing/entries.ts'
import { testServer, type TestServer } from '../testing/testServer.ts'

let server: TestServer
let address: string
beforeEach(async () => {
  server = await testServer()
  address = await server.app.listen({ port: 0, host: '127.0.0.1' })
})
afterEach(() => server.close())

const pushTo = (course: string, number: number) =>
  server.ask({
    method: 'POST',
    url: `/api/courses/${course}/entries`,
    payload: { entries: [noteEntry(number, `note ${number}`, course)] },
  })

/** Reads whole events off a stream, one a call. */
const readerOf = (response: Response) => {
  const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader()
  if (reader === undefined) throw new Error('no stream')
  let text = ''
  const next = async (): Promise<string | null> => {
    while (!text.includes('\n\n')) {
      const { done, value } = await reader.read()
      if (done) return null
      text += value
    }
    const end = text.indexOf('\n\n')
    const event = text.slice(0, end)
    text = text.slice(end + 2)
    return event
  }
  return { next, cancel: () => reader.cancel() }
}

const open = async (course = 'links', headers: Readonly<Record<string, string>> = {}) => {
  const response = await fetch(`${address}/api/courses/${course}/live`, { headers })
  expect(response.headers.get('content-type')).toContain('text/event-stream')
  return readerOf(response)
}
const told = (cursor: string) => `event: entries\ndata: ${JSON.stringify({ cursor })}`

describe('the live stream', () => {
  it('[J29] tells the end of the journal at once and after each push', async () => {
    await pushTo('links', 1)
    const stream = await open()
    expect(await stream.next()).toBe(told(`1.${idOf(1)}.${NOW_MS}`))
    await pushTo('links', 2)
    expect(await stream.next()).toBe(told(`2.${idOf(2)}.${NOW_MS}`))
    await stream.cancel()
  })

  it('[J29] tells what another process took in, which works on the same store', async () => {
    const other = await testServer({ storage: server.storage })
    const stream = await open()
    expect(await stream.next()).toBe(told('0'))
    await other.ask({
      method: 'POST',
      url: '/api/courses/links/entries',
      payload: { entries: [noteEntry(1)] },
    })
    expect(await stream.next()).toBe(told(`1.${idOf(1)}.${NOW_MS}`))
    await stream.cancel()
    await other.close()
  })

  it('[J29] is silent about what is known already and about other courses', async () => {
    await server.storage.journal.addCourse({ id: 'park', name: 'Park' })
    const stream = await open()
    expect(await stream.next()).toBe(told('0'))
    await pushTo('park', 1)
    await pushTo('links', 2)
    await pushTo('links', 2)
    await pushTo('links', 3)
    expect(await stream.next()).toBe(told(`1.${idOf(2)}.${NOW_MS}`))
    expect(await stream.next()).toBe(told(`2.${idOf(3)}.${NOW_MS}`))
    await stream.cancel()
  })

  it('tells many readers, and goes on when one leaves', async () => {
    const [first, second] = [await open(), await open()]
    await first.next()
    await second.next()
    await first.cancel()
    await pushTo('links', 1)
    expect(await second.next()).toBe(told(`1.${idOf(1)}.${NOW_MS}`))
    await second.cancel()
  })

  it('[J29] ends once its token is revoked, by another process too, and goes on for others', async () => {
    const revoked = await open('links', await server.tokenOf('crew'))
    const [row] = await server.storage.tokens.list()
    const other = await open('links', await server.tokenOf('crew'))
    await revoked.next()
    await other.next()
    expect(await server.storage.tokens.revoke(row?.id ?? '', new Date(NOW_MS).toISOString())).toBe(true)
    expect(await revoked.next()).toBeNull()
    await pushTo('links', 1)
    expect(await other.next()).toBe(told(`1.${idOf(1)}.${NOW_MS}`))
    await other.cancel()
  })

  it('[J29] ends for somebody at the machine once there is an account, and for a device whose access ended', async () => {
    const { secret, row } = await createPass(
      server.storage.passes,
      { kind: 'device', role: 'crew', name: 'Ada', account: null, course: null },
      NOW_MS,
    )
    const machine = await open()
    const device = await open('links', { cookie: `swardwright=${secret}` })
    await machine.next()
    await device.next()
    const account = { id: 'a', name: 'Bo', role: 'manager', secret: 'x', createdAt: row.createdAt } as const
    await server.storage.accounts.add(account, { onlyFirst: true })
    expect(await machine.next()).toBeNull()
    await server.storage.passes.end(row.id, row.createdAt)
    expect(await device.next()).toBeNull()
  })

  it('ends when the server closes, so that closing does not wait for readers', async () => {
    const stream = await open()
    await stream.next()
    const closed = server.close()
    expect(await stream.next()).toBeNull()
    await closed
  })

  it('is not there for an unknown course', async () => {
    expect((await fetch(`${address}/api/courses/nowhere/live`)).status).toBe(404)
  })
})
