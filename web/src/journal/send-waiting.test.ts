import { expect, it } from 'vitest'
import { KINDS, type Entry } from '@swardwright/journal'
import { memoryStore } from './memory-store.ts'
import { sendWaiting, type WaitingSender } from './send-waiting.ts'
import type { CallServer } from './server.ts'

const entry = (number: number, course: string): Entry => ({
  id: `0198e2f4-6a00-7cc3-98c4-dc0c0c07${String(number).padStart(4, '0')}`,
  course,
  device: 'device a',
  author: 'Ada',
  at: `2026-08-10T06:00:0${number}.000Z`,
  recordedAt: `2026-08-10T06:00:0${number}.000Z`,
  kind: 'noteWritten',
  version: KINDS.noteWritten.version,
  body: { words: `note ${number}` },
})

/** A server that takes every entry, or refuses those of some ids, and remembers what came for which course. */
const server = (refuse: readonly string[] = []) => {
  const came: string[] = []
  const call = (async (name: string, args: { params: { course: string }; body: { entries: Entry[] } }) => {
    expect(name).toBe('pushEntries')
    const ids = args.body.entries.map(({ id }) => id)
    came.push(...ids.map((id) => `${args.params.course} ${id.slice(-4)}`))
    const refused = ids.filter((id) => refuse.includes(id)).map((id) => ({ id, why: 'not-allowed' }))
    const accepted = ids.filter((id) => !refuse.includes(id))
    return { ok: true, value: { accepted, refused, cursor: '1:x' } }
  }) as unknown as CallServer
  return { call, came }
}

const sender = (store: WaitingSender['store'], call: CallServer): WaitingSender => ({
  store,
  call,
  device: 'device a',
  nowMs: () => Date.UTC(2026, 7, 10, 7),
  author: () => null,
  mayHandOn: () => false,
})

it('sends what waits of that course and of no other, and takes it out of the queue', async () => {
  const store = memoryStore()
  for (const one of [entry(1, 'links'), entry(2, 'park'), entry(3, 'park')]) await store.add(one)
  expect(await store.waiting()).toEqual([
    { course: 'links', count: 1 },
    { course: 'park', count: 2 },
  ])
  expect(await store.courses()).toEqual(['links', 'park'])
  const { call, came } = server()
  expect(await sendWaiting('park', sender(store, call))).toBe('level')
  expect(came).toEqual(['park 0002', 'park 0003'])
  expect(await store.waiting()).toEqual([{ course: 'links', count: 1 }])
})

it('keeps what the server refuses with its reason, for when that course is opened', async () => {
  const store = memoryStore()
  await store.add(entry(2, 'park'))
  const { call } = server([entry(2, 'park').id])
  await sendWaiting('park', sender(store, call))
  expect(await store.waiting()).toEqual([])
  expect((await store.load('park', new Set())).refused).toEqual([
    { id: entry(2, 'park').id, why: 'not-allowed' },
  ])
})

it('leaves everything in the queue while the server is away', async () => {
  const store = memoryStore()
  await store.add(entry(2, 'park'))
  const away = (() => Promise.resolve({ ok: false, why: 'away' })) as unknown as CallServer
  expect(await sendWaiting('park', sender(store, away))).toBe('away')
  expect(await store.waiting()).toEqual([{ course: 'park', count: 1 }])
})
