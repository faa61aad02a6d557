import { afterEach, describe, expect, it, vi } from 'vitest'
import { fetchPhoto, putPart } from './photo-server.ts'

const PLACE = { course: 'ossenby', sha256: 'a'.repeat(64) }
const FILE = Uint8Array.from([1, 2, 3, 4, 5])

afterEach(() => vi.unstubAllGlobals())

/** Lets the server answer so; null breaks the line. Answers with what was asked. */
const answering = (status: number | null, body: unknown = null) => {
  const fetched = vi.fn((_url: string, _init?: RequestInit) =>
    status === null
      ? Promise.reject(new TypeError('Failed to fetch'))
      : Promise.resolve(new Response(JSON.stringify(body), { status })),
  )
  vi.stubGlobal('fetch', fetched)
  return fetched
}

describe('a part of a photo', () => {
  it('[J32] goes with its place in the file, which counts from nought to the last byte', async () => {
    const fetched = answering(202, { received: 4, whole: false })
    expect(await putPart(PLACE, FILE, { from: 2, to: 4 })).toEqual({ got: 'part', received: 4, whole: false })
    const [url, init] = fetched.mock.calls[0] ?? []
    expect(url).toBe(`/api/courses/ossenby/blobs/${PLACE.sha256}`)
    expect(init).toMatchObject({ method: 'PUT', headers: { 'content-range': 'bytes 2-3/5' } })
    expect(init?.body).toEqual(Uint8Array.from([3, 4]))
  })

  it('[J32] is asked after without a body', async () => {
    const fetched = answering(200, { received: 5, whole: true })
    expect(await putPart(PLACE, FILE, null)).toEqual({ got: 'part', received: 5, whole: true })
    expect(fetched.mock.calls[0]?.[1]).toMatchObject({
      headers: { 'content-range': 'bytes */5' },
      body: null,
    })
  })

  it.each([
    ['the line breaks', null, null, { got: 'away' }],
    ['the server stumbles', 503, null, { got: 'away' }],
    ['a log-in has ended', 401, null, { got: 'away' }],
    ['it is asked too often', 429, null, { got: 'away' }],
    ['something in between answers with a page', 200, 'Welcome to the hotel', { got: 'away' }],
    ['it begins elsewhere', 409, { error: { received: 3 } }, { got: 'elsewhere', received: 3 }],
    ['the hash differs', 422, null, { got: 'differs' }],
    ['it is too large', 413, null, { got: 'refused', words: 'It is larger than the server takes.' }],
  ])('ends as it should when %s', async (_when, status, body, expected) => {
    answering(status, body)
    expect(await putPart(PLACE, FILE, { from: 0, to: 5 })).toEqual(expected)
  })
})

describe('getting a photo', () => {
  it('tells one that is not at the server yet from a line that is down', async () => {
    answering(404)
    expect(await fetchPhoto(PLACE.course, PLACE.sha256)).toEqual({ got: 'notYet' })
    answering(null)
    expect(await fetchPhoto(PLACE.course, PLACE.sha256)).toEqual({ got: 'away' })
  })
})
