import { beforeEach, describe, expect, it } from 'vitest'
import { memoryPhotos } from './memory-photos.ts'
import { photoQueue, waitMs, type PhotoQueue } from './photo-queue.ts'
import type { NewPhoto, PhotoStore } from './photo-store.ts'
import { PART_BYTES, type PutAnswer, type PutPart } from './send-photo.ts'

const COURSE = 'ossenby'
const LENGTH = 3 * PART_BYTES - 100
const nameOf = (n: number): string => String(n).repeat(64)

const photo = (n: number): NewPhoto => ({
  course: COURSE,
  body: { sha256: nameOf(n), type: 'image/jpeg', bytes: LENGTH, purpose: 'recovery' },
  file: new Uint8Array(LENGTH),
  thumb: new Uint8Array(9),
  atMs: 0,
})

/** A server that counts bytes, and can be told what to answer instead. `asked` are the parts that came, by where they begin. */
const standInServer = () => {
  const received = new Map<string, number>()
  const asked: (number | null)[] = []
  let instead: PutAnswer[] = []
  const putFor =
    (sha256: string): PutPart =>
    (part) => {
      asked.push(part?.from ?? null)
      const answer = instead.shift()
      if (answer !== undefined) return Promise.resolve(answer)
      const before = received.get(sha256) ?? 0
      if (part !== null && part.from !== before)
        return Promise.resolve({ got: 'elsewhere', received: before })
      const reached = part?.to ?? before
      received.set(sha256, reached)
      return Promise.resolve({ got: 'part', received: reached, whole: reached === LENGTH })
    }
  return {
    putFor,
    received,
    asked,
    answer: (...answers: PutAnswer[]) => {
      instead = answers
    },
  }
}

const AWAY: PutAnswer = { got: 'away' }

let store: PhotoStore
let server: ReturnType<typeof standInServer>
let queue: PhotoQueue
let nowMs: number
let timers: { readonly atMs: number; readonly task: () => void }[]
let mine: boolean

beforeEach(() => {
  store = memoryPhotos()
  server = standInServer()
  nowMs = 1_000_000
  timers = []
  mine = true
  queue = photoQueue({
    course: COURSE,
    store,
    putFor: server.putFor,
    nowMs: () => nowMs,
    later: (afterMs, task) => timers.push({ atMs: nowMs + afterMs, task }),
    isMine: () => mine,
    changed: () => Promise.resolve(),
  })
})

const keep = async (...numbers: readonly number[]): Promise<void> => {
  for (const n of numbers) {
    await store.add(photo(n), nowMs + n)
    await store.settle(COURSE, nameOf(n), { untold: null })
  }
}
const left = async () => (await store.waiting(COURSE)).map(({ sha256 }) => Number(sha256[0]))
/** Lets time pass up to the next timer and waits until the queue is still again. */
const pass = async (): Promise<number> => {
  const [next] = timers.splice(0, 1)
  if (next === undefined) throw new Error('nothing is due later')
  const waited = next.atMs - nowMs
  nowMs = next.atMs
  next.task()
  await queue.run()
  return waited
}

describe('photos that wait', () => {
  it('go one after the other, in parts, and leave the queue', async () => {
    await keep(1, 2)
    await queue.run()
    expect(await left()).toEqual([])
    expect(server.asked).toEqual([null, 0, PART_BYTES, 2 * PART_BYTES, null, 0, PART_BYTES, 2 * PART_BYTES])
    expect(timers).toEqual([])
  })

  it('[J32] go on from where the line broke', async () => {
    await keep(1)
    server.answer(
      { got: 'part', received: 0, whole: false },
      { got: 'part', received: PART_BYTES, whole: false },
      AWAY,
    )
    await queue.run()
    expect(await left()).toEqual([1])
    // The server kept a little of the part that broke off.
    server.received.set(nameOf(1), PART_BYTES + 700)
    server.asked.length = 0
    await pass()
    expect(server.asked).toEqual([null, PART_BYTES + 700, 2 * PART_BYTES + 700])
    expect(await left()).toEqual([])
  })

  it('are not sent again where the server has them', async () => {
    await keep(1)
    server.received.set(nameOf(1), LENGTH)
    await queue.run()
    expect(server.asked).toEqual([null])
    expect(await left()).toEqual([])
  })

  it('go on where another device got meanwhile', async () => {
    await keep(1)
    server.answer({ got: 'part', received: 0, whole: false }, { got: 'elsewhere', received: 2 * PART_BYTES })
    server.received.set(nameOf(1), 2 * PART_BYTES)
    await queue.run()
    expect(server.asked).toEqual([null, 0, 2 * PART_BYTES])
    expect(await left()).toEqual([])
  })

  it('wait longer after each failure, ten minutes at most, and all together', async () => {
    await keep(1, 2)
    server.answer(...Array.from({ length: 20 }, () => AWAY))
    await queue.run()
    expect(server.asked).toHaveLength(1)
    const waits: number[] = []
    for (let n = 0; n < 5; n += 1) waits.push(await pass())
    expect(Math.max(...waits)).toBeLessThanOrEqual(600_000)
    // Worked by hand: 5 s, then three times as long each time: 15, 45, 135, 405, then the bound of 600 s.
    expect([1, 2, 3, 4, 5, 6, 40].map(waitMs)).toEqual([
      5_000, 15_000, 45_000, 135_000, 405_000, 600_000, 600_000,
    ])
    server.answer()
    for (let n = 0; timers.length > 0 && n < 20; n += 1) await pass()
    expect(await left()).toEqual([])
  })

  it('go at once when the line is back', async () => {
    await keep(1)
    server.answer(AWAY)
    await queue.run()
    await queue.run()
    expect(await left()).toEqual([1])
    await queue.run(true)
    expect(await left()).toEqual([])
  })

  it('stay, with the server’s words, when they are refused, and hold nobody up', async () => {
    await keep(1, 2)
    server.answer({ got: 'refused', words: 'it is too large' })
    await queue.run()
    expect(await store.waiting(COURSE)).toMatchObject([{ sha256: nameOf(1), refused: 'it is too large' }])
    expect(await store.read(COURSE, nameOf(1), 'file', nowMs)).toHaveLength(LENGTH)
    await store.settle(COURSE, nameOf(1), { refused: null })
    await queue.run()
    expect(await left()).toEqual([])
  })

  it('are tried three times when they arrive otherwise than they were sent; then somebody is told', async () => {
    await keep(1)
    for (const tries of [1, 2, 3]) {
      server.answer({ got: 'differs' })
      await queue.run(true)
      const [waits] = await store.waiting(COURSE)
      expect(waits?.refused === null).toBe(tries < 3)
    }
  })

  it('never ask for ever: an answer that moves nothing on counts as no answer', async () => {
    await keep(1)
    const still: PutAnswer = { got: 'part', received: 5, whole: false }
    server.answer(still, still, still, still)
    await queue.run()
    expect(server.asked).toEqual([null, 5])
    expect(timers).toHaveLength(1)
  })

  it('wait while another page deals with the server, while the entry is not written, and when nobody wants them', async () => {
    await store.add(photo(1), nowMs)
    await keep(2)
    await store.settle(COURSE, nameOf(2), { wanted: false })
    await queue.run()
    await store.settle(COURSE, nameOf(2), { wanted: true })
    mine = false
    await queue.run()
    expect(server.asked).toEqual([])
    mine = true
    await queue.run()
    expect(await left()).toEqual([1])
  })
})

describe('what is kept of photos', () => {
  const most = { file: 2 * LENGTH, thumb: 1_000 }

  it('is bounded: what was longest not looked at goes, what waits stays', async () => {
    store = memoryPhotos(most)
    await keep(1, 2)
    await store.settle(COURSE, nameOf(2), null)
    const fromServer = (n: number, atMs: number) =>
      store.keep({ course: COURSE, sha256: nameOf(n), size: 'file' }, new Uint8Array(LENGTH), atMs)
    await fromServer(3, nowMs + 30)
    await store.read(COURSE, nameOf(2), 'file', nowMs + 40)
    await fromServer(4, nowMs + 50)
    const here = async (n: number) => (await store.read(COURSE, nameOf(n), 'file', nowMs + 60)) !== null
    expect([await here(1), await here(2), await here(3), await here(4)]).toEqual([true, true, false, true])
  })

  it('goes whole when room is needed, but for what waits', async () => {
    await keep(1, 2)
    await store.settle(COURSE, nameOf(2), null)
    await store.makeRoom()
    expect(await store.read(COURSE, nameOf(1), 'file', nowMs)).not.toBeNull()
    expect(await store.read(COURSE, nameOf(2), 'file', nowMs)).toBeNull()
    expect(await store.read(COURSE, nameOf(2), 'thumb', nowMs)).toBeNull()
  })

  it('[J28] is queued again when the server was put back from a backup', async () => {
    await keep(1, 2)
    await store.settle(COURSE, nameOf(1), null)
    await store.sendAgain(COURSE, nowMs)
    await store.sendAgain(COURSE, nowMs)
    expect(new Set(await left())).toEqual(new Set([1, 2]))
  })
})
