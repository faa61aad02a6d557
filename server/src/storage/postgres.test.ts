import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startServer } from '../startServer.ts'
import { noteEntry } from '../testing/entries.ts'
import { hasPostgres, postgresCluster, type PostgresCluster } from '../testing/postgresCluster.ts'
import { describeStorage } from './acceptance.ts'
import { postgresStorage } from './postgres.ts'
import type { Storage } from './storage.ts'

const unexpected = (message: string): void => {
  throw new Error(message)
}

describe.skipIf(!hasPostgres())('with PostgreSQL on this machine', () => {
  let cluster: PostgresCluster
  beforeAll(async () => {
    cluster = await postgresCluster()
  }, 120_000)
  afterAll(() => cluster.stop(), 60_000)

  describeStorage('storage in PostgreSQL', async () =>
    postgresStorage(await cluster.newDatabase(), unexpected),
  )

  describe('a PostgreSQL database', () => {
    const arriving = (number: number) => ({
      entry: noteEntry(number),
      receivedAt: '2026-08-10T06:00:00.000Z',
      sender: 'local',
      skewMs: null,
    })

    it('[J26] is shared by several processes that start and push at once, and numbers without gaps', async () => {
      const url = await cluster.newDatabase()
      const opened: readonly Storage[] = await Promise.all(
        [1, 2, 3].map(() => postgresStorage(url, unexpected)),
      )
      await opened[0]?.journal.addCourse({ id: 'links', name: 'Links' })
      await Promise.all(
        opened.flatMap(({ journal }, process) =>
          Array.from({ length: 10 }, (_, index) =>
            journal.append('links', [arriving(process * 100 + index), arriving(900 + index)], null),
          ),
        ),
      )
      const kept = await opened[1]?.journal.page('links', 0, 1000)
      expect(kept?.map((entry) => entry.seq)).toEqual(Array.from({ length: 40 }, (_, index) => index + 1))
      expect(new Set(kept?.map((entry) => entry.entry.id)).size).toBe(40)
      for (const storage of opened) await storage.close()
    })

    it('[J27] never shows a later number before an earlier one, whoever reads meanwhile', async () => {
      const url = await cluster.newDatabase()
      const [writer, reader] = [
        await postgresStorage(url, unexpected),
        await postgresStorage(url, unexpected),
      ]
      await writer.journal.addCourse({ id: 'links', name: 'Links' })
      let after = 0
      let isWriting = true
      const seen: number[] = []
      const reading = (async () => {
        while (isWriting || seen.length < 60) {
          const page = await reader.journal.page('links', after, 1000)
          seen.push(...page.map((kept) => kept.seq))
          after = page.at(-1)?.seq ?? after
        }
      })()
      await Promise.all(
        Array.from({ length: 60 }, (_, index) => writer.journal.append('links', [arriving(index)], null)),
      )
      isWriting = false
      await reading
      expect(seen).toEqual(Array.from({ length: 60 }, (_, index) => index + 1))
      await writer.close()
      await reader.close()
    })

    it('serves one club from two servers: what one takes in, the other gives out', async () => {
      const database = await cluster.newDatabase()
      const options = {
        dataDir: '',
        port: 0,
        host: '127.0.0.1',
        database,
        log: ({ message = '' }) => unexpected(message),
      }
      const [one, two] = [await startServer(options), await startServer(options)]
      const at = new Date().toISOString()
      const entry = { ...noteEntry(1), course: 'ossenby', at, recordedAt: at }
      const pushed = await fetch(`${one.address}api/courses/ossenby/entries`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ entries: [entry] }),
      })
      expect(await pushed.json()).toMatchObject({ accepted: [entry.id], refused: [] })
      const pulled = await fetch(`${two.address}api/courses/ossenby/entries`)
      const { entries }: { entries: readonly { id: string }[] } = JSON.parse(await pulled.text())
      // The demo is planted once, by whichever server came first: course, forecast and prescription.
      expect(entries).toHaveLength(4)
      expect(entries.at(-1)?.id).toBe(entry.id)
      await one.close()
      await two.close()
    })

    it('that can’t be reached is refused with the reason', async () => {
      await expect(postgresStorage('postgres://club@/none?host=/nowhere', unexpected)).rejects.toThrow()
    })
  })
})

describe.runIf(!hasPostgres())('without PostgreSQL on this machine', () => {
  it.skip('its storage is not tried: install PostgreSQL to do so', () => undefined)
})
