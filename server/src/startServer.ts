import { isLoopbackName } from './access/loopback.ts'
import { buildServer, type LogEvent } from './buildServer.ts'
import { plantDemo } from './demo.ts'
import { sqliteStorage } from './storage/sqlite.ts'
import type { Provider } from './weather/provider.ts'

/** Port that is taken unless another is wanted. */
export const DEFAULT_PORT = 8420

/** Address that is listened on unless another is wanted: this machine alone. */
export const DEFAULT_HOST = '127.0.0.1'

/** Where and with what a server runs. */
export type StartOptions = {
  readonly dataDir: string
  readonly port: number
  readonly host: string
  readonly log: (event: LogEvent) => void
  /** Weather service that the operator named. */
  readonly weatherProvider?: Provider | null
}

/** A server that listens. */
export type RunningServer = {
  /** Address for people, such as `http://127.0.0.1:8420/`. */
  readonly address: string
  /** True when whoever uses it on this machine is the manager; else everybody needs a token. */
  readonly singleUser: boolean
  /** Answers what was begun, ends the streams, closes the database. */
  readonly close: () => Promise<void>
}

/**
 * Opens the database (with the demo course when it is new), and listens. Throws what Node throws when the address can't be had
 * (`EADDRINUSE`, `EACCES`, `EADDRNOTAVAIL`), or when the database can't be used.
 */
export const startServer = async ({
  dataDir,
  port,
  host,
  log,
  weatherProvider = null,
}: StartOptions): Promise<RunningServer> => {
  const storage = await sqliteStorage(dataDir)
  const singleUser = isLoopbackName(host) || host === '::1'
  const app = await buildServer({ storage, clock: Date.now, log, singleUser, weatherProvider })
  const close = async (): Promise<void> => {
    await app.close()
    await storage.close()
  }
  try {
    await plantDemo(storage, Date.now())
    const address = await app.listen({ port, host })
    return { address: `${address}/`, singleUser, close }
  } catch (error) {
    await close()
    throw error
  }
}
