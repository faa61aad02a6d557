import type { FastifyInstance, InjectOptions } from 'fastify'
import type { Role } from '@swardwright/journal'
import { createToken } from '../access/tokens.ts'
import { buildServer, type LogEvent, type ServerOptions } from '../buildServer.ts'
import { memoryStorage } from '../storage/memory.ts'
import type { Storage } from '../storage/storage.ts'
import { NOW_MS } from './entries.ts'

/** A server in memory with the course `links`, asked without a socket. */
export type TestServer = {
  readonly app: FastifyInstance
  readonly storage: Storage
  readonly logged: readonly LogEvent[]
  /** A request as somebody at this machine makes it, or with the headers given. */
  readonly ask: (options: InjectOptions) => Promise<{
    readonly status: number
    readonly headers: Readonly<Record<string, unknown>>
    /** The body as JSON; unchecked, since tests look at it. */
    readonly body: Readonly<Record<string, unknown>>
    readonly text: string
  }>
  /** Headers that carry a new token of the role. */
  readonly tokenOf: (role: Role) => Promise<Readonly<Record<string, string>>>
  readonly close: () => Promise<void>
}

const jsonOf = (text: string, type: unknown): Readonly<Record<string, unknown>> =>
  text !== '' && String(type).startsWith('application/json') ? JSON.parse(text) : {}

/** Makes a test server. */
export const testServer = async (options: Partial<ServerOptions> = {}): Promise<TestServer> => {
  const storage = options.storage ?? memoryStorage()
  const logged: LogEvent[] = []
  await storage.journal.addCourse({ id: 'links', name: 'Links' })
  const app = await buildServer({
    storage,
    clock: () => NOW_MS,
    log: (event) => logged.push(event),
    singleUser: true,
    ...options,
  })
  return {
    app,
    storage,
    logged,
    ask: async (request) => {
      const response = await app.inject(request)
      return {
        status: response.statusCode,
        headers: response.headers,
        body: jsonOf(response.body, response.headers['content-type']),
        text: response.body,
      }
    },
    tokenOf: async (role) => {
      const { token } = await createToken(storage.tokens, { role, name: role, nowMs: NOW_MS })
      return { authorization: `Bearer ${token}` }
    },
    close: () => app.close(),
  }
}
