import { createHash, randomBytes } from 'node:crypto'
import { request } from 'node:http'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sqliteStorage } from '../storage/sqlite.ts'
import type { Storage } from '../storage/storage.ts'
import { testServer, type TestServer } from '../testing/testServer.ts'

/** 700,000 bytes that begin as a JPEG does. */
const PHOTO = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), randomBytes(699_997)])
const SHA256 = createHash('sha256').update(PHOTO).digest('hex')
const URL_OF = `/api/courses/links/blobs/${SHA256}`

let folder: string
let storage: Storage
let server: TestServer
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'swardwright-photos-'))
  storage = await sqliteStorage(folder)
  server = await testServer({ storage })
})
afterEach(async () => {
  await server.close()
  await storage.close()
  await rm(folder, { recursive: true, force: true })
})

const put = (payload: Buffer, range: string | null, url = URL_OF) =>
  server.ask({
    method: 'PUT',
    url,
    payload,
    headers: {
      'content-type': 'image/jpeg',
      ...(range === null ? {} : { 'content-range': range }),
    },
  })
const piece = (from: number, to: number) =>
  put(PHOTO.subarray(from, to), `bytes ${from}-${to - 1}/${PHOTO.length}`)
const state = () => put(Buffer.alloc(0), `bytes */${PHOTO.length}`)
const get = (range?: string) =>
  server.app.inject({ url: URL_OF, ...(range === undefined ? {} : { headers: { range } }) })

describe('a photo', () => {
  it('[J32] comes in whole and goes out as it came', async () => {
    expect(await put(PHOTO, null)).toMatchObject({
      status: 200,
      body: { received: PHOTO.length, whole: true },
    })
    const got = await get()
    expect(got.rawPayload.equals(PHOTO)).toBe(true)
    expect(got.headers).toMatchObject({ 'content-type': 'image/jpeg', 'accept-ranges': 'bytes' })
  })

  it('[J32] comes in pieces, each told how far it got', async () => {
    expect(await state()).toMatchObject({ status: 202, body: { received: 0, whole: false } })
    const first = await piece(0, 300_000)
    expect(first).toMatchObject({ status: 202, body: { received: 300_000, whole: false } })
    expect(first.headers['range']).toBe('bytes=0-299999')
    const early = await piece(500_000, 700_000)
    expect(early).toMatchObject({
      status: 409,
      body: { error: { type: 'wrongOffset', received: 300_000 } },
    })
    expect(early.headers['range']).toBe('bytes=0-299999')
    expect((await get()).statusCode).toBe(404)
    expect(await piece(300_000, 700_000)).toMatchObject({ status: 200, body: { whole: true } })
    expect(await state()).toMatchObject({ status: 200, body: { received: 700_000, whole: true } })
    expect((await piece(0, 300_000)).status).toBe(200)
  })

  it('[J32] takes a piece that comes again or overlaps, and the whole after a part', async () => {
    await piece(0, 300_000)
    expect(await piece(0, 300_000)).toMatchObject({ status: 202, body: { received: 300_000 } })
    expect(await piece(200_000, 400_000)).toMatchObject({ status: 202, body: { received: 400_000 } })
    expect(await put(PHOTO, null)).toMatchObject({ status: 200, body: { received: 700_000, whole: true } })
    expect((await get()).rawPayload.equals(PHOTO)).toBe(true)
  })

  it('[J32] comes in whole from several senders at once', async () => {
    const all = await Promise.all(Array.from({ length: 8 }, () => put(PHOTO, null)))
    expect(all.map(({ status }) => status)).toEqual(Array(8).fill(200))
    expect((await get()).rawPayload.equals(PHOTO)).toBe(true)
  })

  it('[J32] is an error when it can’t be kept, not a line that broke', async () => {
    const blobs: Storage['blobs'] = {
      ...storage.blobs,
      append: () => Promise.reject(Object.assign(new Error('no space left'), { code: 'ENOSPC' })),
    }
    const full = await testServer({ storage: { ...storage, blobs } })
    const answer = await full.ask({ method: 'PUT', url: URL_OF, payload: PHOTO })
    expect(answer).toMatchObject({ status: 507, body: { error: { type: 'storeFull' } } })
    expect(full.logged.map(({ level }) => level)).toEqual(['error'])
    await full.close()
  })

  it('[J32] keeps what came when the line breaks, and goes on from there', async () => {
    const address = await server.app.listen({ port: 0, host: '127.0.0.1' })
    await new Promise<void>((resolve) => {
      const sending = request(`${address}${URL_OF}`, {
        method: 'PUT',
        headers: {
          'content-type': 'image/jpeg',
          'content-length': PHOTO.length,
          'content-range': `bytes 0-${PHOTO.length - 1}/${PHOTO.length}`,
        },
      })
      sending.on('error', () => resolve())
      sending.write(PHOTO.subarray(0, 400_000), () => setTimeout(() => sending.destroy(), 200))
    })
    let received = 0
    while (received === 0) received = Number((await state()).body['received'])
    await expect.poll(async () => Number((await state()).body['received'])).toBeGreaterThanOrEqual(262_144)
    received = Number((await state()).body['received'])
    expect(received).toBeLessThanOrEqual(400_000)
    // The server may still be keeping the last of what came; it then says so, and is asked again.
    const goOn = async () => (await piece(Number((await state()).body['received']), PHOTO.length)).status
    await expect.poll(goOn).toBe(200)
    expect((await get()).rawPayload.equals(PHOTO)).toBe(true)
  })

  it('[J32] is finished when it is asked after, should the server have gone down just before', async () => {
    await storage.blobs.append('links', SHA256, 0, PHOTO)
    expect((await get()).statusCode).toBe(404)
    expect(await state()).toMatchObject({ status: 200, body: { received: 700_000, whole: true } })
    expect((await get()).rawPayload.equals(PHOTO)).toBe(true)
  })

  it('[J32] with another hash is refused and dropped', async () => {
    const other = `/api/courses/links/blobs/${'0'.repeat(64)}`
    expect(await put(PHOTO, null, other)).toMatchObject({
      status: 422,
      body: { error: { type: 'hashDiffers' } },
    })
    expect((await put(Buffer.alloc(0), 'bytes */700000', other)).body).toEqual({ received: 0, whole: false })
  })

  it('[J32] is 20 MB at most, said before or found on the way', async () => {
    expect((await put(PHOTO, 'bytes 0-699999/20000001')).status).toBe(413)
    expect((await put(Buffer.alloc(20_000_001), null)).status).toBe(413)
  })

  it.each([
    ['bytes=0-2', 206, 'bytes 0-2/700000', 3],
    ['bytes=699990-', 206, 'bytes 699990-699999/700000', 10],
    ['bytes=-5', 206, 'bytes 699995-699999/700000', 5],
    ['bytes=699999-800000', 206, 'bytes 699999-699999/700000', 1],
    ['bytes=700000-', 416, 'bytes */700000', null],
    ['bytes=9-3', 416, 'bytes */700000', null],
    // RFC 9110, 14.2: a unit that is not understood is ignored; so may be several ranges at once.
    ['lines=0-2', 200, undefined, 700_000],
    ['bytes=0-2,5-6', 200, undefined, 700_000],
  ])('gives the part %s', async (range, status, told, length) => {
    await put(PHOTO, null)
    const got = await get(range)
    expect([got.statusCode, got.headers['content-range']]).toEqual([status, told])
    if (length !== null) expect(got.rawPayload).toHaveLength(length)
  })

  it('is refused by another name than a SHA-256, with a wrong range, and in a course that is not there', async () => {
    expect((await put(PHOTO, null, '/api/courses/links/blobs/photo.jpg')).status).toBe(400)
    for (const range of ['lines 1-2/3', 'bytes 5-2/700000', 'bytes 0-700000/700000', 'bytes */*'])
      expect((await put(PHOTO, range)).body).toMatchObject({ error: { field: 'Content-Range' } })
    expect((await put(PHOTO, null, `/api/courses/nowhere/blobs/${SHA256}`)).status).toBe(404)
  })
})
