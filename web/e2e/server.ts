import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'

/** The built server as a club runs it. */
export type ClubServer = {
  readonly address: string
  readonly stop: () => Promise<void>
  /** Ends it as a power cut would. */
  readonly kill: () => Promise<void>
}

const ENTRY = join(import.meta.dirname, '../../cli/dist/main.js')

const addressIn = (line: string): string | undefined => /http:\/\/[^\s/]+/u.exec(line)?.[0]

/** Starts the server and resolves once it prints its address. */
export const startClubServer = async (
  dataDir: string,
  port = 0,
  more: readonly string[] = [],
): Promise<ClubServer> => {
  const argv = [ENTRY, 'serve', '--port', String(port), '--data', dataDir, ...more]
  const child = spawn(process.execPath, argv, { stdio: ['ignore', 'pipe', 'pipe'] })
  const heard: string[] = []
  child.stderr.on('data', (chunk: Buffer) => heard.push(chunk.toString()))
  const exited = once(child, 'exit')
  for await (const line of createInterface({ input: child.stdout })) {
    heard.push(line)
    const address = addressIn(line)
    if (address === undefined) continue
    child.stdout.resume()
    return {
      address,
      stop: async () => {
        child.kill('SIGTERM')
        await exited
      },
      kill: async () => {
        child.kill('SIGKILL')
        await exited
      },
    }
  }
  throw new Error(`the server ended before it was ready:\n${heard.join('\n')}`)
}
