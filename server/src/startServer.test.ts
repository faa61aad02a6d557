import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { momentFromMs, type PushAnswer, type RouteOutput } from '@swardwright/journal'
import { startServer, type StartOptions } from './startServer.ts'
import { idOf, noteEntry } from './testing/entries.ts'

let root: string
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'swardwright-start-'))
})
afterEach(() => rm(root, { recursive: true, force: true }))

const options = (more: Partial<StartOptions> = {}): StartOptions => ({
  dataDir: join(root, 'data'),
  port: 0,
  host: '127.0.0.1',
  log: ({ message }) => {
    throw new Error(message)
  },
  ...more,
})

const jsonOf = async <T>(response: Promise<Response>): Promise<T> => (await response).json() as Promise<T>

describe('starting a server', () => {
  it('makes the folder, the database and the demo course, and keeps everything over a restart', async () => {
    const first = await startServer(options())
    const courses = await jsonOf<RouteOutput<'courses'>>(fetch(`${first.address}api/courses`))
    expect(courses).toHaveLength(1)
    const path = `api/courses/${courses[0]?.id ?? ''}/entries`
    const at = momentFromMs(Date.now())
    const entry = { ...noteEntry(1), course: courses[0]?.id, at, recordedAt: at }
    const pushed = await jsonOf<PushAnswer>(
      fetch(first.address + path, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ entries: [entry] }),
      }),
    )
    expect(pushed.accepted).toEqual([idOf(1)])
    await first.close()
    const second = await startServer(options())
    expect(await jsonOf(fetch(`${second.address}api/courses`))).toEqual(courses)
    const page = await jsonOf<RouteOutput<'pullEntries'>>(fetch(second.address + path))
    expect(page.cursor).toBe(pushed.cursor)
    expect(page.entries.at(-1)).toMatchObject(entry)
    await second.close()
  })

  it('fails with the code of Node when the port is taken, and leaves nothing open', async () => {
    const first = await startServer(options())
    const port = Number(new URL(first.address).port)
    await expect(startServer(options({ port }))).rejects.toMatchObject({ code: 'EADDRINUSE' })
    await first.close()
    const again = await startServer(options({ port }))
    await again.close()
  })

  it('[J22] asks everybody for a token when others can reach it', async () => {
    const server = await startServer(options({ host: '0.0.0.0' }))
    expect(server.singleUser).toBe(false)
    const port = new URL(server.address).port
    expect((await fetch(`http://127.0.0.1:${port}/api/courses`)).status).toBe(401)
    expect((await fetch(`http://127.0.0.1:${port}/health`)).status).toBe(200)
    await server.close()
  })
})
