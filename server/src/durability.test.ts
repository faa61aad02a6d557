import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { momentFromMs, type Entry, type PushAnswer, type RouteOutput } from '@swardwright/journal'
import { noteEntry } from './testing/entries.ts'

const CHILD = fileURLToPath(new URL('./testing/serveChild.ts', import.meta.url))
const ROOT = fileURLToPath(new URL('../../', import.meta.url))

/** How long the server works in each round before it is killed, ms: short and long, so that kills fall at all stages. */
const ROUNDS_MS = [300, 60, 700]
const WRITERS = 6

let dataDir: string
beforeEach(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'swardwright-kill-'))
})
afterEach(() => rm(dataDir, { recursive: true, force: true }))

const start = async (): Promise<{ readonly child: ChildProcess; readonly address: string }> => {
  const flags = ['--conditions=swardwright-source', '--import', 'tsx']
  const child = spawn(process.execPath, [...flags, CHILD, dataDir], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const lines = createInterface({ input: child.stdout })
  const [address]: unknown[] = await once(lines, 'line')
  return { child, address: String(address) }
}

const kill = async (child: ChildProcess): Promise<void> => {
  const gone = once(child, 'exit')
  child.kill('SIGKILL')
  await gone
}

const now = (entry: Entry): Entry => {
  const at = momentFromMs(Date.now())
  return { ...entry, course: 'ossenby', at, recordedAt: at }
}

/** Pushes one entry after the other until the server is gone; calls back with each id that was accepted. */
const write = async (
  address: string,
  nextNumber: () => number,
  accepted: (id: string) => void,
): Promise<void> => {
  for (;;) {
    const entries = [now(noteEntry(nextNumber())), now(noteEntry(nextNumber()))]
    try {
      const response = await fetch(`${address}api/courses/ossenby/entries`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ entries }),
      })
      const answer = (await response.json()) as PushAnswer
      for (const id of answer.accepted) accepted(id)
    } catch {
      // The server was killed in the middle of this push: nothing of it was confirmed.
      return
    }
  }
}

const pullAll = async (address: string): Promise<RouteOutput<'pullEntries'>['entries']> => {
  const response = await fetch(`${address}api/courses/ossenby/entries?limit=1000`)
  const page = (await response.json()) as RouteOutput<'pullEntries'>
  let { entries, cursor, more } = page
  while (more) {
    const next = await fetch(`${address}api/courses/ossenby/entries?limit=1000&after=${cursor}`)
    const following = (await next.json()) as RouteOutput<'pullEntries'>
    entries = [...entries, ...following.entries]
    ;({ cursor, more } = following)
  }
  return entries
}

describe('a server that is killed while phones push', () => {
  it('[J24] has lost no entry that it accepted, and doubled none', { timeout: 120_000 }, async () => {
    const accepted = new Set<string>()
    let number = 1
    const nextNumber = () => number++
    for (const ms of ROUNDS_MS) {
      const { child, address } = await start()
      const writers = Array.from({ length: WRITERS }, () =>
        write(address, nextNumber, (id) => accepted.add(id)),
      )
      await new Promise((resolve) => setTimeout(resolve, ms))
      await kill(child)
      await Promise.all(writers)
    }
    const { child, address } = await start()
    const entries = await pullAll(address)
    await kill(child)
    const kept = entries.map((entry) => entry.id)
    expect(accepted.size).toBeGreaterThan(50)
    expect([...accepted].filter((id) => !kept.includes(id))).toEqual([])
    expect(new Set(kept).size).toBe(kept.length)
    expect(entries.map((entry) => entry.seq)).toEqual(kept.map((_, index) => index + 1))
  })
})
