import { describe, expect, it } from 'vitest'
import { computePort, type WorkerLike } from './port.ts'
import type { Ask, Reply } from './protocol.ts'

/** A worker that keeps what it was asked and answers when the test says so. */
const standIn = () => {
  const asked: Ask[] = []
  let onMessage: (event: { readonly data: Reply }) => void = () => undefined
  let onError: (event: { readonly message: string }) => void = () => undefined
  const worker: WorkerLike = {
    postMessage: (ask) => asked.push(ask),
    addEventListener: (type: string, listener: never) => {
      if (type === 'message') onMessage = listener
      else onError = listener
    },
  }
  return {
    worker,
    asked,
    reply: (data: Reply) => onMessage({ data }),
    crash: (message: string) => onError({ message }),
  }
}

const ask = { name: 'tining.areaShare', input: {} }

describe('computePort', () => {
  it('gives each question its own answer, in whatever order they come', async () => {
    const { worker, asked, reply } = standIn()
    const port = computePort(worker, () => undefined)
    const [first, second] = [port('origin', ask), port('origin', ask)]
    reply({ id: asked[1]?.id ?? 0, kind: 'answer', output: 'second' })
    reply({ id: asked[0]?.id ?? 0, kind: 'answer', output: 'first' })
    expect([await first, await second]).toEqual(['first', 'second'])
  })

  it('hands on progress before the answer', async () => {
    const { worker, asked, reply } = standIn()
    const seen: unknown[] = []
    const answer = computePort(worker, () => undefined)('origin', ask, (progress) => seen.push(progress))
    const id = asked[0]?.id ?? 0
    reply({ id, kind: 'progress', progress: 1 })
    reply({ id, kind: 'progress', progress: 2 })
    reply({ id, kind: 'answer', output: null })
    await answer
    expect(seen).toEqual([1, 2])
  })

  it('rejects with the worker’s own words when the program is at fault', async () => {
    const { worker, asked, reply } = standIn()
    const answer = computePort(worker, () => undefined)('origin', ask)
    reply({ id: asked[0]?.id ?? 0, kind: 'fault', message: 'Invariant broken: no shed' })
    await expect(answer).rejects.toThrow('Invariant broken: no shed')
  })

  it('rejects all that wait when the worker itself dies', async () => {
    const { worker, crash } = standIn()
    const port = computePort(worker, () => undefined)
    const answers = [port('origin', ask), port('origin', ask)]
    crash('out of memory')
    const settled = await Promise.allSettled(answers)
    expect(settled.map((one) => one.status)).toEqual(['rejected', 'rejected'])
  })
})
