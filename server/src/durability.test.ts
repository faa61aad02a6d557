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

/** Rounds in the suite. The full proof is `KILL_ROUNDS=100 npx vitest run server/src/durability.test.ts`. */
const ROUNDS = Number(process.env['KILL_ROUNDS'] ?? 5)

/** Entries accepted before the server is killed, round after round: kills fall early and late, however slow the machine is. */
const ACCEPTED = [60, 1, 120, 7, 30] as const
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
  if (child.exitCode !== null || child.signalCode !== null) return
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
  it(
    '[J24] has lost no entry that it accepted, and doubled none',
    { timeout: 60_000 * (ROUNDS + 1) },
    async () => {
      const accepted = new Set<string>()
      let number = 1
      let writers: readonly Promise<void>[] = []
      const nextNumber = () => number++
      let least = 0
      for (let round = 0; round < ROUNDS; round += 1) {
        const count = ACCEPTED[round % ACCEPTED.length] ?? 1
        least += count
        const { child, address } = await start()
        const enough = accepted.size + count
        const killed = new Promise<void>((resolve) => {
          const taken = (id: string): void => {
            accepted.add(id)
            if (accepted.size >= enough && !child.killed) resolve(kill(child))
          }
          writers = Array.from({ length: WRITERS }, () => write(address, nextNumber, taken))
        })
        await killed
        await Promise.all(writers)
      }
      const { child, address } = await start()
      const entries = await pullAll(address)
      await kill(child)
      const kept = entries.map((entry) => entry.id)
      const there = new Set(kept)
      expect(accepted.size).toBeGreaterThanOrEqual(least)
      expect([...accepted].filter((id) => !there.has(id))).toEqual([])
      expect(there.size).toBe(kept.length)
      expect(entries.map((entry) => entry.seq)).toEqual(kept.map((_, index) => index + 1))
    },
  )
})
