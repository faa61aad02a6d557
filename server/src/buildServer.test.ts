import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BODY_MAX_BYTES, REQUESTS_PER_MINUTE } from './buildServer.ts'
import { noteEntry } from './testing/entries.ts'
import { testServer, type TestServer } from './testing/testServer.ts'
import { memoryStorage } from './storage/memory.ts'

let server: TestServer
beforeAll(async () => {
  server = await testServer()
})
afterAll(() => server.close())

const message = (body: Readonly<Record<string, unknown>>): unknown =>
  typeof body['error'] === 'object' && body['error'] !== null && 'message' in body['error']
    ? body['error'].message
    : undefined

describe('the server', () => {
  it('says that it is well', async () => {
    expect(await server.ask({ url: '/health' })).toMatchObject({ status: 200, body: { status: 'ok' } })
  })

  it('lists courses and makes one', async () => {
    const made = await server.ask({ method: 'POST', url: '/api/courses', payload: { name: ' Far Links ' } })
    expect(made).toMatchObject({ status: 200, body: { name: 'Far Links' } })
    const { text } = await server.ask({ url: '/api/courses' })
    expect(JSON.parse(text)).toEqual([
      { id: made.body['id'], name: 'Far Links' },
      { id: 'links', name: 'Links' },
    ])
  })

  it.each([
    ['no name', {}, 'body field name must be present'],
    ['an empty name', { name: '  ' }, 'body field name must be'],
    ['a name of another kind', { name: 7 }, 'body field name must be a text'],
  ])('makes no course of %s, and says why', async (_what, payload, words) => {
    const { status, body } = await server.ask({ method: 'POST', url: '/api/courses', payload })
    expect(status).toBe(400)
    expect(message(body)).toContain(words)
  })

  it('answers a body that is not JSON with one sentence', async () => {
    const headers = { 'content-type': 'application/json' }
    const broken = await server.ask({ method: 'POST', url: '/api/courses', headers, payload: '{"name":' })
    expect(broken).toMatchObject({
      status: 400,
      body: { error: { type: 'notJson', message: 'the body is not JSON, or has a field called __proto__' } },
    })
  })

  it('takes no form and no plain text, which a foreign page could send', async () => {
    for (const type of [
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data; boundary=x',
    ]) {
      const headers = { 'content-type': type }
      const answer = await server.ask({
        method: 'POST',
        url: '/api/courses',
        headers,
        payload: '{"name":"x"}',
      })
      expect(answer).toMatchObject({ status: 415, body: { error: { type: 'wrongMedia' } } })
    }
  })

  it('answers a body that is too large with the limit', async () => {
    const payload = { entries: [], padding: 'x'.repeat(BODY_MAX_BYTES) }
    const { status, body } = await server.ask({ method: 'POST', url: '/api/courses/links/entries', payload })
    expect(status).toBe(413)
    expect(message(body)).toBe('the body is larger than 8 MB; send it in parts')
  })

  it('answers what is not there with 404 in one form', async () => {
    for (const url of ['/api', '/api/nothing', '/api/courses/links/nothing'])
      expect(await server.ask({ url })).toMatchObject({
        status: 404,
        body: { error: { type: 'routeUnknown' } },
      })
    expect(await server.ask({ url: '/api/courses/nowhere/entries' })).toMatchObject({
      status: 404,
      body: { error: { type: 'courseUnknown', course: 'nowhere' } },
    })
    expect((await server.ask({ method: 'DELETE', url: '/api/courses' })).status).toBe(404)
  })

  it('keeps API answers out of caches and tells browsers to be careful', async () => {
    const { headers } = await server.ask({ url: '/api/courses' })
    expect(headers['cache-control']).toBe('no-store')
    expect(headers['x-content-type-options']).toBe('nosniff')
    const policy = String(headers['content-security-policy'])
    expect(policy).toContain("default-src 'self'")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(policy).not.toContain('upgrade-insecure-requests')
    expect(headers['strict-transport-security']).toBeUndefined()
  })

  it('says that it failed, and logs why, when the store fails', async () => {
    const storage = memoryStorage()
    const journal = { ...storage.journal, append: () => Promise.reject(new Error('disk full')) }
    const failing = await testServer({ storage: { ...storage, journal } })
    const payload = { entries: [noteEntry(1)] }
    const answer = await failing.ask({ method: 'POST', url: '/api/courses/links/entries', payload })
    expect(answer).toMatchObject({ status: 500, body: { error: { type: 'internal' } } })
    expect(answer.text).not.toContain('disk full')
    expect(failing.logged).toHaveLength(1)
    expect(failing.logged[0]?.message).toContain('disk full')
    await failing.close()
  })

  it('slows down who asks too often, but never somebody at this machine', async () => {
    const busy = await testServer()
    const ask = (remoteAddress: string) => busy.app.inject({ url: '/health', remoteAddress })
    let last = await ask('192.0.2.7')
    for (let count = 0; count < REQUESTS_PER_MINUTE; count += 1) last = await ask('192.0.2.7')
    expect(last.statusCode).toBe(429)
    expect(last.json()).toMatchObject({
      error: { type: 'tooOften', message: 'too many requests; wait a minute' },
    })
    for (let count = 0; count <= REQUESTS_PER_MINUTE; count += 1) last = await ask('127.0.0.1')
    expect(last.statusCode).toBe(200)
    await busy.close()
  })
})
