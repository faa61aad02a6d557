import { isLoopbackName } from './access/loopback.ts'
import { needsSetUp } from './access/access.ts'
import { newSetUpCode } from './access/setUpCode.ts'
import { buildServer, type LogEvent } from './buildServer.ts'
import { plantDemo } from './demo.ts'
import { openStorage } from './storage/openStorage.ts'
import type { Pair } from './tls/authority.ts'
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
  /** Address of a PostgreSQL database, `postgres://...`; without one, a file in the data folder. */
  readonly database?: string | null
  /** Served over https with these. */
  readonly tls?: Pair | null
}

/** A server that listens. */
export type RunningServer = {
  /** Address for people, such as `http://127.0.0.1:8420/`. */
  readonly address: string
  /** True when it listens on this machine alone: whoever uses it here is the manager, until there is an account. */
  readonly singleUser: boolean
  /** The code that makes the manager's account from another machine; null once there is one. */
  readonly setUpCode: string | null
  /** Answers what was begun, ends the streams, closes the database. */
  readonly close: () => Promise<void>
}

/**
 * Opens the database (with the demo course when it is new), and listens. Throws what Node throws when the address can't be had
 * (`EADDRINUSE`, `EACCES`, `EADDRNOTAVAIL`), or when the database can't be used.
 */
export const startServer = async (options: StartOptions): Promise<RunningServer> => {
  const { dataDir, port, host, log, weatherProvider = null, database = null, tls = null } = options
  const storage = await openStorage({ dataDir, database, log })
  const singleUser = isLoopbackName(host) || host === '::1'
  let close = (): Promise<void> => storage.close()
  try {
    const setUpCode = (await needsSetUp(storage)) ? newSetUpCode() : null
    const about = { storage, clock: Date.now, log, singleUser, weatherProvider, setUpCode, tls }
    const app = await buildServer(about)
    close = async () => {
      await app.close()
      await storage.close()
    }
    await plantDemo(storage, Date.now())
    const address = await app.listen({ port, host })
    return { address: `${address}/`, singleUser, setUpCode, close }
  } catch (error) {
    await close()
    throw error
  }
}
