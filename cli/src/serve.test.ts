import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { startServer } from '@swardwright/server'
import { dispatch } from './dispatch.ts'
import { serve } from './serve.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))

let dataDir: string
beforeEach(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'swardwright-serve-'))
})
afterEach(() => rm(dataDir, { recursive: true, force: true }))

const run = async (...argv: readonly string[]) => {
  const err: string[] = []
  const unused = () => Promise.reject(new Error('serve reads and writes no files of its own'))
  const io = { out: () => undefined, readFile: unused, writeFile: unused }
  return {
    code: await dispatch([serve], ['serve', ...argv], { ...io, err: (text) => void err.push(text) }),
    err,
  }
}

const program = (port: string) =>
  spawn(
    process.execPath,
    [
      '--conditions=swardwright-source',
      '--import',
      'tsx',
      'cli/src/main.ts',
      'serve',
      '--port',
      port,
      '--data',
      dataDir,
    ],
    { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] },
  )

describe('serve', () => {
  it(
    'prints one line with the address, serves, and ends cleanly when asked to',
    { timeout: 120_000 },
    async () => {
      for (const signal of ['SIGTERM', 'SIGINT'] as const) {
        const child = program('0')
        const lines: string[] = []
        const reader = createInterface({ input: child.stdout }).on('line', (line) => lines.push(line))
        await once(reader, 'line')
        const address = /^Swardwright is at (http:\/\/127\.0\.0\.1:\d+\/)$/u.exec(lines[0] ?? '')?.[1] ?? ''
        expect((await fetch(`${address}health`)).status).toBe(200)
        const exit = once(child, 'exit')
        child.kill(signal)
        expect(await exit).toEqual([0, null])
        expect(lines).toHaveLength(1)
      }
    },
  )

  it('says clearly that a port is taken, with exit code 2', async () => {
    const server = await startServer({ dataDir, port: 0, host: '127.0.0.1', log: () => undefined })
    const { port } = new URL(server.address)
    expect(await run('--port', port, '--data', dataDir)).toEqual({
      code: 2,
      err: [`port ${port} is taken by another program; choose another with --port`],
    })
    await server.close()
  })

  it.each([
    [['--port', '70000'], "--port is '70000'; it must be a whole number from 0 to 65535"],
    [['--port', ''], "--port is ''; it must be a whole number from 0 to 65535"],
    [['--port', 'x'], "--port is 'x'; it must be a whole number from 0 to 65535"],
    [['now'], "unexpected 'now'"],
    [['--weather-url', 'ftp://x'], "--weather-url is 'ftp://x'; it must be a web address"],
    [['--data', '/dev/null/x'], "can't keep data in /dev/null/x: "],
  ])('takes no %j, with one sentence and exit code 2', async (argv, words) => {
    const { code, err } = await run(...argv)
    expect(code).toBe(2)
    expect(err).toHaveLength(1)
    expect(err[0]).toContain(words)
  })
})
