import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Entry } from '@swardwright/journal'
import { idOf, noteEntry } from '../testing/entries.ts'
import type { ArrivingEntry, Storage } from './storage.ts'

const RECEIVED_MS = Date.UTC(2026, 7, 10, 6)

const arriving = (entry: Entry, sender = 'local', skewMs: number | null = null): ArrivingEntry => ({
  entry,
  sender,
  skewMs,
  receivedAt: new Date(RECEIVED_MS).toISOString(),
})

const notes = (from: number, to: number): readonly ArrivingEntry[] =>
  Array.from({ length: to - from + 1 }, (_, index) => arriving(noteEntry(from + index)))

const journalRules = (storage: () => Storage): void => {
  it('lists courses by name, each with the name it was made with', async () => {
    await storage().journal.addCourse({ id: 'b', name: 'Alder Park' })
    await storage().journal.addCourse({ id: 'links', name: 'Renamed by nobody' })
    expect(await storage().journal.courses()).toEqual([
      { id: 'b', name: 'Alder Park' },
      { id: 'links', name: 'Links' },
    ])
  })

  it('[J26] numbers entries from 1 without gaps, each course on its own', async () => {
    const { journal } = storage()
    await journal.addCourse({ id: 'other', name: 'Other' })
    await journal.append('links', notes(1, 2), null)
    await journal.append('other', [arriving(noteEntry(9, 'x', 'other'))], null)
    const { end } = await journal.append('links', notes(3, 3), null)
    expect(end).toEqual({ seq: 3, id: idOf(3), receivedMs: RECEIVED_MS })
    expect((await journal.page('links', 0, 10)).map((kept) => kept.seq)).toEqual([1, 2, 3])
    expect((await journal.page('other', 0, 10)).map((kept) => kept.seq)).toEqual([1])
  })

  it('gives entries back as they came', async () => {
    const first = arriving(noteEntry(1), 'device:a', -1500)
    await storage().journal.append('links', [first], null)
    expect(await storage().journal.page('links', 0, 10)).toEqual([{ ...first, seq: 1 }])
  })

  it('[J25] stores an entry once and tells another one under its id apart', async () => {
    const { journal } = storage()
    expect((await journal.append('links', notes(1, 2), null)).outcomes).toEqual(['stored', 'stored'])
    const again = [...notes(2, 3), arriving(noteEntry(1, 'another')), ...notes(3, 3)]
    const { outcomes, end } = await journal.append('links', again, null)
    expect(outcomes).toEqual(['known', 'stored', 'differs', 'known'])
    expect(end).toEqual({ seq: 3, id: idOf(3), receivedMs: RECEIVED_MS })
    expect((await journal.page('links', 0, 1))[0]?.entry.body).toEqual({ words: 'note 1' })
  })

  it('[J27] pages through all entries', async () => {
    await storage().journal.append('links', notes(1, 7), null)
    const seqs = async (after: number, limit: number) =>
      (await storage().journal.page('links', after, limit)).map((kept) => kept.seq)
    expect(await seqs(0, 3)).toEqual([1, 2, 3])
    expect(await seqs(3, 3)).toEqual([4, 5, 6])
    expect(await seqs(6, 3)).toEqual([7])
    expect(await seqs(7, 3)).toEqual([])
  })

  it('finds entries by id with who sent them, in order', async () => {
    const { journal } = storage()
    await journal.append(
      'links',
      [arriving(noteEntry(2), 'token:a'), arriving(noteEntry(1), 'token:b')],
      null,
    )
    const found = await journal.find('links', [idOf(1), idOf(5), idOf(2)])
    expect(found.map((kept) => [kept.seq, kept.sender])).toEqual([
      [1, 'token:a'],
      [2, 'token:b'],
    ])
  })

  it('has no end for an empty journal or a course that is not there', async () => {
    expect(await storage().journal.end('links')).toBeNull()
    expect(await storage().journal.end('nowhere')).toBeNull()
    expect(await storage().journal.page('nowhere', 0, 10)).toEqual([])
    await expect(storage().journal.append('nowhere', notes(1, 1), null)).rejects.toThrow('nowhere')
  })

  it('keeps the latest name by moment, then by id, whatever the order of arrival', async () => {
    const { journal } = storage()
    const name = async () => (await journal.courses())[0]?.name
    await journal.append('links', [], { name: 'Second', atMs: 200, entry: 'b' })
    await journal.append('links', [], { name: 'First', atMs: 100, entry: 'z' })
    expect(await name()).toBe('Second')
    await journal.append('links', [], { name: 'Tie', atMs: 200, entry: 'a' })
    expect(await name()).toBe('Second')
    await journal.append('links', [], { name: 'Third', atMs: 200, entry: 'c' })
    expect(await name()).toBe('Third')
  })

  it('[J26] leaves no gap when many push at once', async () => {
    const { journal } = storage()
    await Promise.all(
      Array.from({ length: 20 }, (_, index) =>
        journal.append('links', notes(index * 5 + 1, index * 5 + 5), null),
      ),
    )
    const kept = await journal.page('links', 0, 1000)
    expect(kept.map((entry) => entry.seq)).toEqual(Array.from({ length: 100 }, (_, index) => index + 1))
    expect(new Set(kept.map((entry) => entry.entry.id)).size).toBe(100)
  })
}

const weatherRules = (storage: () => Storage): void => {
  it('keeps the weather of each course by name, the last text standing', async () => {
    const { journal, weather } = storage()
    await journal.addCourse({ id: 'other', name: 'Other' })
    expect(await weather.read('links', 'forecast')).toBeNull()
    await weather.write('links', 'forecast', 'rain')
    await weather.write('links', 'ensemble', 'perhaps')
    await weather.write('other', 'forecast', 'sun')
    await weather.write('links', 'forecast', 'rain, 3 °C')
    expect(await weather.read('links', 'forecast')).toBe('rain, 3 °C')
    expect(await weather.read('links', 'ensemble')).toBe('perhaps')
    expect(await weather.read('other', 'forecast')).toBe('sun')
    await expect(weather.write('nowhere', 'forecast', 'rain')).rejects.toThrow()
  })
}

const tokenRules = (storage: () => Storage): void => {
  const row = {
    id: 't1',
    hash: 'h1',
    role: 'crew',
    name: 'Shed',
    createdAt: '2026-08-10T06:00:00.000Z',
  } as const

  it('finds a token by its hash until it is revoked', async () => {
    const { tokens } = storage()
    await tokens.add(row)
    expect(await tokens.findByHash('h1')).toEqual({ ...row, revokedAt: null })
    expect(await tokens.findByHash('h2')).toBeNull()
    expect(await tokens.revoke('t1', '2026-08-11T06:00:00.000Z')).toBe(true)
    expect(await tokens.findByHash('h1')).toBeNull()
    expect(await tokens.list()).toEqual([{ ...row, revokedAt: '2026-08-11T06:00:00.000Z' }])
  })

  it('revokes once, and only what is there', async () => {
    const { tokens } = storage()
    await tokens.add(row)
    expect(await tokens.revoke('t2', row.createdAt)).toBe(false)
    await tokens.revoke('t1', row.createdAt)
    expect(await tokens.revoke('t1', '2026-09-01T00:00:00.000Z')).toBe(false)
    expect((await tokens.list())[0]?.revokedAt).toBe(row.createdAt)
  })

  it('lists tokens in the order in which they were made', async () => {
    const { tokens } = storage()
    await tokens.add(row)
    await tokens.add({ ...row, id: 'a0', hash: 'h2' })
    expect((await tokens.list()).map((token) => token.id)).toEqual(['t1', 'a0'])
  })
}

const accountRules = (storage: () => Storage): void => {
  const row = (id: string, name: string) =>
    ({ id, name, role: 'deputy', secret: `s-${id}`, createdAt: '2026-08-10T06:00:00.000Z' }) as const
  const many = { onlyFirst: false }

  it('keeps accounts in the order in which they were made, one a name whatever its case', async () => {
    const { accounts } = storage()
    expect(await accounts.add(row('b', 'Ada Birch'), many)).toBe(true)
    expect(await accounts.add(row('a', 'Ben Ash'), many)).toBe(true)
    expect(await accounts.add(row('c', ' ADA birch'), many)).toBe(false)
    expect((await accounts.list()).map((account) => account.id)).toEqual(['b', 'a'])
    expect((await accounts.list())[0]).toEqual({ ...row('b', 'Ada Birch'), endedAt: null })
  })

  it('makes a first account once, also when two ask at the same moment', async () => {
    const { accounts } = storage()
    const first = { onlyFirst: true }
    const made = await Promise.all(['a', 'b', 'c'].map((id) => accounts.add(row(id, `Name ${id}`), first)))
    expect(made.filter(Boolean)).toHaveLength(1)
    expect(await accounts.add(row('d', 'Another'), first)).toBe(false)
    expect(await accounts.list()).toHaveLength(1)
  })

  it('ends an account once and frees its name', async () => {
    const { accounts } = storage()
    await accounts.add(row('a', 'Ada'), { onlyFirst: true })
    expect(await accounts.end('a', '2026-09-01T00:00:00.000Z')).toBe(true)
    expect(await accounts.end('a', '2026-09-02T00:00:00.000Z')).toBe(false)
    expect(await accounts.end('z', '2026-09-02T00:00:00.000Z')).toBe(false)
    expect((await accounts.list())[0]?.endedAt).toBe('2026-09-01T00:00:00.000Z')
    expect(await accounts.add(row('b', 'Ada'), { onlyFirst: true })).toBe(true)
  })

  it('changes a secret', async () => {
    const { accounts } = storage()
    await accounts.add(row('a', 'Ada'), many)
    await accounts.setSecret('a', 'new')
    expect((await accounts.list())[0]?.secret).toBe('new')
  })
}

const passRules = (storage: () => Storage): void => {
  const pass = (id: string, account: string | null = null) =>
    ({
      id,
      hash: `h-${id}`,
      kind: account === null ? 'invite' : 'session',
      role: 'crew',
      name: 'Shed tablet',
      account,
      course: null,
      createdAt: '2026-08-10T06:00:00.000Z',
      expiresAt: '2026-08-17T06:00:00.000Z',
    }) as const
  const ended = '2026-08-11T06:00:00.000Z'

  it('finds a pass by its hash until it ends, and ends it for one of two who ask at once', async () => {
    const { passes } = storage()
    await passes.add(pass('p1'))
    expect(await passes.findByHash('h-p1')).toEqual({ ...pass('p1'), endedAt: null })
    const both = await Promise.all([passes.end('p1', ended), passes.end('p1', ended)])
    expect(both.filter(Boolean)).toHaveLength(1)
    expect(await passes.findByHash('h-p1')).toBeNull()
    expect(await passes.list()).toEqual([{ ...pass('p1'), endedAt: ended }])
  })

  it('keeps the one course that a pass opens', async () => {
    const { passes } = storage()
    await passes.add({ ...pass('p1'), kind: 'page', course: 'links' })
    expect(await passes.findByHash('h-p1')).toMatchObject({ kind: 'page', course: 'links' })
  })

  it('ends the sessions of one account and no others', async () => {
    const { accounts, passes } = storage()
    for (const id of ['a', 'b'])
      await accounts.add(
        { id, name: id, role: 'deputy', secret: 's', createdAt: ended },
        { onlyFirst: false },
      )
    for (const [id, account] of [
      ['p1', 'a'],
      ['p2', 'b'],
      ['p3', 'a'],
    ] as const)
      await passes.add(pass(id, account))
    await passes.endOfAccount('a', ended)
    expect((await passes.list()).map((row) => row.endedAt)).toEqual([ended, null, ended])
  })
}

const blobRules = (storage: () => Storage): void => {
  // NIST, SHA-256 example 'abc' (FIPS 180-2, appendix B.1).
  const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
  const bytes = (text: string) => new TextEncoder().encode(text)

  it('takes a file in pieces, in order, and gives any part of it once it is whole', async () => {
    const { blobs } = storage()
    expect(await blobs.state('links', abc)).toEqual({ received: 0, whole: false })
    expect(await blobs.append('links', abc, 0, bytes('a'))).toBe(true)
    expect(await blobs.append('links', abc, 0, bytes('a'))).toBe(true)
    expect(await blobs.append('links', abc, 2, bytes('c'))).toBe(false)
    expect(await blobs.state('links', abc)).toEqual({ received: 1, whole: false })
    expect(await blobs.read('links', abc, 0, 3)).toBeNull()
    expect(await blobs.append('links', abc, 0, bytes('abc'))).toBe(true)
    expect(await blobs.append('links', abc, 1, bytes('b'))).toBe(true)
    expect(await blobs.state('links', abc)).toEqual({ received: 3, whole: false })
    expect(await blobs.finish('links', abc)).toBe(true)
    expect(await blobs.state('links', abc)).toEqual({ received: 3, whole: true })
    expect(await blobs.read('links', abc, 1, 3)).toEqual(bytes('bc'))
    expect(await blobs.append('links', abc, 3, bytes('d'))).toBe(true)
    expect((await blobs.state('links', abc)).received).toBe(3)
    expect((await blobs.state('park', abc)).received).toBe(0)
  })

  it('drops a file whose hash differs, so that it can be sent anew', async () => {
    const { blobs } = storage()
    expect(await blobs.finish('links', abc)).toBe(false)
    await blobs.append('links', abc, 0, bytes('abd'))
    expect(await blobs.finish('links', abc)).toBe(false)
    expect(await blobs.state('links', abc)).toEqual({ received: 0, whole: false })
    await blobs.append('links', abc, 0, bytes('abc'))
    expect(await blobs.finish('links', abc)).toBe(true)
  })

  it('takes each piece once when two send the same file at once', async () => {
    const { blobs } = storage()
    const taken = await Promise.all([1, 2, 3].map(() => blobs.append('links', abc, 0, bytes('abc'))))
    expect(taken).toEqual([true, true, true])
    expect(await blobs.finish('links', abc)).toBe(true)
  })
}

/** What every storage must do. `make` gives a new, empty one. */
export const describeStorage = (name: string, make: () => Promise<Storage>): void => {
  describe(name, () => {
    let storage: Storage
    beforeEach(async () => {
      storage = await make()
      await storage.journal.addCourse({ id: 'links', name: 'Links' })
    })
    afterEach(async () => {
      await storage.close()
    })
    journalRules(() => storage)
    tokenRules(() => storage)
    weatherRules(() => storage)
    accountRules(() => storage)
    passRules(() => storage)
    blobRules(() => storage)
  })
}
