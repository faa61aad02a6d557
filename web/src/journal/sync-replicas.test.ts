import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fold, initialState, type Entry } from '@swardwright/journal'
import type { CallServer } from './server.ts'
import { exchange } from './sync.ts'
import { noteOf, standInDevice, standInServer } from './testing/stand-in.ts'

const DEVICES = [0, 1, 2] as const
const device = fc.constantFrom(...DEVICES)
const DAY_MS = 24 * 3600 * 1000

/** How an exchange can go wrong: the server is away, or its answer is lost after it has taken what was sent. */
const line = fc.constantFrom('good', 'away', 'answerLost', 'pullLost')

const step = fc.oneof(
  { weight: 5, arbitrary: fc.record({ do: fc.constant('record'), device, daysAgo: fc.nat(9) }) },
  { weight: 5, arbitrary: fc.record({ do: fc.constant('exchange'), device, line }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('restart'), device }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('deliverAgain'), nth: fc.nat(20) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('putBack'), count: fc.nat(12) }) },
)
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never

/** Author and device tell whose entry it is; some strike an earlier one, so that order matters to the fold. */
const entryOf = (n: number, by: number, daysAgo: number, before: readonly Entry[]): Entry => {
  const at = new Date(Date.UTC(2026, 7, 20, 6, 0, n) - daysAgo * DAY_MS).toISOString()
  const base = { ...noteOf(n, `note ${n}`), device: `device ${by}`, author: `person ${by}`, at }
  const struck = before.findLast(({ author }) => author === base.author)
  return n % 4 === 3 && struck !== undefined
    ? { ...base, kind: 'struck', body: { entry: struck.id, reason: 'wrong' } }
    : base
}

const lossy = (call: CallServer, how: string): CallServer =>
  (async (name: string, args: never) => {
    if (how === 'away' || (how === 'pullLost' && name === 'pullEntries')) return { ok: false, why: 'away' }
    const answer = await call(name as never, args)
    return how === 'answerLost' ? { ok: false, why: 'away' } : answer
  }) as CallServer

const played = async (steps: readonly Step[]) => {
  const server = standInServer({ page: 3 })
  const devices = await Promise.all(
    // The first decides and hands on; the others are crew, who send again only what is their own.
    DEVICES.map((n) => standInDevice(server.call, [], { author: `person ${n}`, mayHandOn: n === 0 })),
  )
  const made: Entry[] = []
  for (const one of steps) {
    if (one.do === 'deliverAgain') server.deliverAgain('nth' in one ? one.nth : 0)
    else if (one.do === 'putBack') server.putBack('count' in one ? one.count : 0)
    else if ('device' in one) {
      const held = devices[one.device]
      if (held === undefined) throw new Error('there are three devices')
      if (one.do === 'restart') await held.restart()
      else if ('line' in one) await exchange({ ...held.holder, call: lossy(server.call, one.line) })
      else if ('daysAgo' in one) {
        const entry = entryOf(made.length, one.device, one.daysAgo, made)
        made.push(entry)
        await held.record(entry)
      }
    }
  }
  // The line is good again: each sends and reads, and reads once more what the others sent meanwhile.
  for (const held of [...devices, ...devices]) expect(await exchange(held.holder)).toBe('level')
  return { server, devices, made }
}

describe('three devices and a server', () => {
  it('[J5] [J6] [J25] [J28] end in one state with everything once: offline for days, answers lost, deliveries late and twice, the server put back', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 20, maxLength: 60, size: 'max' }), async (steps) => {
        const { server, devices, made } = await played(steps)
        const ids = made.map(({ id }) => id).sort()
        expect(server.kept().toSorted()).toEqual(ids)
        const states = await Promise.all(
          devices.map(async ({ store }) => {
            const kept = await store.load('ossenby', new Set())
            expect(kept.unsent).toEqual([])
            expect(kept.refused).toEqual([])
            return fold(initialState, kept.entries).facts
          }),
        )
        for (const held of devices) expect(held.known()).toEqual(ids)
        expect(states[1]).toEqual(states[0])
        expect(states[2]).toEqual(states[0])
      }),
      { numRuns: 200, seed: 20260810 },
    )
  })
})
