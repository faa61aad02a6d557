import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'

const ENTRY = fileURLToPath(new URL('../../cli/dist/main.js', import.meta.url))

/** The built server with the demo course, on a free port and a data folder of its own. */
export type ServedClub = { readonly address: string; readonly stop: () => Promise<void> }

/** Starts it; throws with what it said where it ends before it prints its address. */
export const serveClub = async (): Promise<ServedClub> => {
  const data = await mkdtemp(join(tmpdir(), 'swardwright-bench-'))
  const child = spawn(process.execPath, [ENTRY, 'serve', '--port', '0', '--data', data], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const exited = once(child, 'exit')
  for await (const line of createInterface({ input: child.stdout })) {
    const address = /http:\/\/[^\s/]+/u.exec(line)?.[0]
    if (address === undefined) continue
    child.stdout.resume()
    const stop = async (): Promise<void> => {
      child.kill('SIGTERM')
      await exited
      await rm(data, { recursive: true, force: true })
    }
    return { address, stop }
  }
  throw new Error('the server ended before it was ready')
}
