import { describe, expect, it } from 'vitest'
import type { Entry, StoredEntry } from '@swardwright/journal'
import type { CallServer } from './server.ts'
import { exchange, firstBatch } from './sync.ts'
import { noteOf as entry, standInDevice as device, standInServer } from './testing/stand-in.ts'

const ids = (...numbers: readonly number[]) => numbers.map((n) => entry(n).id)

describe('exchange', () => {
  it('sends what is unsent and reads what others recorded', async () => {
    const server = standInServer()
    const a = await device(server.call, [entry(1), entry(2)])
    const b = await device(server.call, [entry(3)])
    expect([await exchange(a.holder), await exchange(b.holder), await exchange(a.holder)]).toEqual([
      'level',
      'level',
      'level',
    ])
    expect(a.known()).toEqual(ids(1, 2, 3))
    expect(b.known()).toEqual(ids(1, 2, 3))
    expect((await a.store.load('ossenby', new Set())).unsent).toEqual([])
  })

  it('keeps all in the queue while the server is away, and sends it once when it is back', async () => {
    const server = standInServer()
    const a = await device(server.call, [entry(1)])
    server.goAway(true)
    expect(await exchange(a.holder)).toBe('away')
    expect((await a.store.load('ossenby', new Set())).unsent).toEqual(ids(1))
    server.goAway(false)
    await exchange(a.holder)
    await exchange(a.holder)
    expect(server.kept()).toEqual(ids(1))
  })

  it('takes a refused entry out of the queue, keeps it, and remembers why', async () => {
    const server = standInServer({ refuse: ids(1) })
    const a = await device(server.call, [entry(1), entry(2)])
    await exchange(a.holder)
    const kept = await a.store.load('ossenby', new Set())
    expect(kept.unsent).toEqual([])
    expect(kept.refused).toEqual([{ id: entry(1).id, why: 'not-allowed' }])
    expect(kept.entries.map((one) => one.id)).toEqual(ids(1, 2))
    expect(server.kept()).toEqual(ids(2))
  })

  it('hears from its own entries, and from nobody else’s, how far its clock is off', async () => {
    const server = standInServer()
    const call = (async (name: string, args: never) => {
      const answer = await server.call(name as never, args)
      if (name !== 'pullEntries' || !answer.ok) return answer
      const { entries, ...rest } = answer.value as { entries: StoredEntry[] }
      const skewed = entries.map((one) => ({ ...one, skewMs: one.device === 'device a' ? 420_000 : -9 }))
      return { ok: true, value: { ...rest, entries: skewed } }
    }) as CallServer
    const a = await device(call, [entry(1), { ...entry(2), device: 'device b' }])
    await exchange(a.holder)
    expect(a.ahead).toEqual([420_000])
  })

  it('sends everything again to a server that was put back from an older backup', async () => {
    const server = standInServer()
    const a = await device(server.call, [entry(1), entry(2), entry(3)])
    await exchange(a.holder)
    server.putBack(1)
    await exchange(a.holder)
    expect(server.kept().toSorted()).toEqual(ids(1, 2, 3))
  })
})

describe('a server that lost what it had confirmed', () => {
  it('[J28] gets it again, also from a device that had not read it back yet', async () => {
    const server = standInServer()
    const a = await device(server.call, [entry(1), entry(2)])
    const cut = {
      ...a.holder,
      call: ((name: string, args: never) =>
        name === 'pullEntries'
          ? Promise.resolve({ ok: false, why: 'away' })
          : server.call(name as never, args)) as CallServer,
    }
    expect(await exchange(cut)).toBe('away')
    expect(server.kept()).toEqual(ids(1, 2))
    server.putBack(0)
    await exchange(a.holder)
    expect(server.kept()).toEqual(ids(1, 2))
  })

  it('[J28] gets it again also where the device has recorded more meanwhile: what was not read back is read back first', async () => {
    const server = standInServer()
    const a = await device(server.call, [entry(1)])
    const cut = ((name: string, args: never) =>
      name === 'pullEntries'
        ? Promise.resolve({ ok: false, why: 'away' })
        : server.call(name as never, args)) as CallServer
    await exchange({ ...a.holder, call: cut })
    server.putBack(0)
    const b = await device(server.call, [entry(2)])
    await exchange(b.holder)
    await a.record(entry(3))
    await exchange(a.holder)
    expect(server.kept().toSorted()).toEqual(ids(1, 2, 3))
  })

  it('[J28] gets it again also where the last entry read lies under its old number again', async () => {
    const server = standInServer()
    const [a, b] = [await device(server.call, [entry(1)]), await device(server.call, [entry(2)])]
    await exchange(a.holder)
    await exchange(b.holder)
    await exchange(a.holder)
    server.putBack(0)
    const c = await device(server.call, [entry(3)])
    await exchange(c.holder)
    // Late on its way: what b sent before comes in once more, as number two.
    server.deliverAgain(1)
    expect(server.kept()).toEqual(ids(3, 2))
    await exchange(a.holder)
    expect(server.kept().toSorted()).toEqual(ids(1, 2, 3))
    expect(a.known()).toEqual(ids(1, 2, 3))
  })

  it('[J30] gets what others wrote from those who decide, told apart from their own, and not from crew', async () => {
    const crew = { author: 'Ben', mayHandOn: false }
    const manager = { author: 'Ada', mayHandOn: true }
    const by = (n: number, author: string): Entry => ({ ...entry(n), author })
    for (const [as, again] of [
      [crew, ids(2)],
      [manager, ids(1, 2)],
    ] as const) {
      const server = standInServer()
      const flags: (boolean | undefined)[] = []
      const call = ((name: string, args: { body?: { handedOn?: boolean } }) => {
        if (name === 'pushEntries') flags.push(args.body?.handedOn)
        return server.call(name as never, args as never)
      }) as CallServer
      const a = await device(call, [by(1, 'Cora'), by(2, as.author)], as)
      await exchange(a.holder)
      flags.length = 0
      server.putBack(0)
      await exchange(a.holder)
      expect(server.kept()).toEqual(again)
      expect(flags).toEqual(as.mayHandOn ? [true, undefined] : [undefined])
    }
  })
})

describe('firstBatch', () => {
  it('sends at least one entry however large it is', () => {
    expect(firstBatch([entry(1, 'x'.repeat(3_000_000)), entry(2)])).toHaveLength(1)
  })

  it('stops before a push grows too large: three of 900,000 characters go as two', () => {
    const large = [1, 2, 3].map((n) => entry(n, 'x'.repeat(900_000)))
    expect(firstBatch(large)).toHaveLength(2)
  })

  it('sends all where they are few', () => {
    expect(firstBatch([entry(1), entry(2)])).toHaveLength(2)
  })
})
