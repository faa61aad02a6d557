import rateLimit from '@fastify/rate-limit'
import fastify, { type FastifyError, type FastifyInstance, type FastifyRequest } from 'fastify'
import { accessOf, isFromThisMachine } from './access/access.ts'
import { attempts } from './access/attempts.ts'
import { foreignOrigin, isNamelessChange } from './access/origin.ts'
import { COST, type PasswordCost } from './access/passwords.ts'
import { stillIn } from './access/stillIn.ts'
import type { ApiError } from './errors.ts'
import { addSecurityHeaders } from './headers.ts'
import { journalReader } from './journalReader.ts'
import { liveHub, type LiveHub } from './liveHub.ts'
import { handlersOf } from './routes/handlers.ts'
import { registerRoutes, sendError } from './routes/registrar.ts'
import { APP_FOLDER, serveApp } from './staticApp.ts'
import { isStoreFull } from './storage/storeFull.ts'
import type { Storage } from './storage/storage.ts'
import type { Pair } from './tls/authority.ts'
import { USUAL_PATIENCE, type Patience } from './weather/ask.ts'
import type { Provider } from './weather/provider.ts'
import { weatherService } from './weather/weatherService.ts'

/** Largest body of a request, bytes. A push of more is sent in parts. */
export const BODY_MAX_BYTES = 8_000_000

/** Requests that one address may make in a minute, somebody at this very machine excepted. */
export const REQUESTS_PER_MINUTE = 1200

/** Something that whoever keeps the server should see. */
export type LogEvent = { readonly level: 'info' | 'warn' | 'error'; readonly message: string }

/** What a server is made of. */
export type ServerOptions = {
  readonly storage: Storage
  /** Epoch milliseconds. */
  readonly clock: () => number
  readonly log: (event: LogEvent) => void
  /** True only when the server listens on this machine alone: whoever uses it here is then the manager. */
  readonly singleUser: boolean
  /** The code that makes the manager's account from elsewhere; without one that is only done at the machine itself. */
  readonly setUpCode?: string | null
  /** What a new password costs to check; the usual cost unless told. */
  readonly passwordCost?: PasswordCost
  /** Served over https with these; over plain http without. */
  readonly tls?: Pair | null
  /** Folder of the built app; the one beside this package unless told. */
  readonly appFolder?: string
  /** Weather service that the operator named; without one it is off until a manager turns the usual one on. */
  readonly weatherProvider?: Provider | null
  readonly weatherPatience?: Patience
}

/** What Fastify itself found wrong with a request, in our words; null when it is a fault of ours. */
const errorOf = (error: FastifyError): ApiError | null => {
  if (isStoreFull(error)) return { type: 'storeFull' }
  if (error.statusCode === 429) return { type: 'tooOften' }
  if (error.statusCode === 413) return { type: 'tooLarge', maxBytes: BODY_MAX_BYTES }
  if (error.statusCode === 415) return { type: 'wrongMedia' }
  return error.statusCode === 400 ? { type: 'notJson' } : null
}

const handleErrors = (app: FastifyInstance, log: ServerOptions['log']): void => {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const known = errorOf(error)
    if (known === null || known.type === 'storeFull')
      log({ level: 'error', message: `${request.method} ${request.url}: ${error.stack ?? error.message}` })
    return sendError(reply, known ?? { type: 'internal' })
  })
}

const limitRates = async (app: FastifyInstance, singleUser: boolean): Promise<void> => {
  await app.register(rateLimit, {
    max: REQUESTS_PER_MINUTE,
    timeWindow: 60_000,
    allowList: (request: FastifyRequest) => singleUser && isFromThisMachine(request),
  })
}

/** Says who is asking before any route runs, and turns away pages of others. */
const askWho = (app: FastifyInstance, { storage, singleUser, clock }: ServerOptions): void => {
  app.decorateRequest('access', null)
  app.addHook('onRequest', async (request, reply) => {
    const origin = foreignOrigin(request, singleUser)
    if (origin !== null) return sendError(reply, { type: 'foreignOrigin', origin })
    const hasCookie = request.headers.cookie !== undefined && request.headers.authorization === undefined
    if (hasCookie && isNamelessChange(request)) return sendError(reply, { type: 'originMissing' })
    const access = await accessOf(request, { storage, singleUser, clock })
    if (!access.ok) return sendError(reply, access.error)
    request.access = access.value
    return undefined
  })
}

const endStreams = (app: FastifyInstance, hub: LiveHub): void => {
  app.addHook('preClose', async () => hub.close())
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))

/** A proxy at this very machine is believed when it says where a request came from; anybody else's word is not. */
const SETTINGS = {
  bodyLimit: BODY_MAX_BYTES,
  forceCloseConnections: 'idle',
  logger: false,
  trustProxy: 'loopback',
} as const

// The two kinds of server differ in a type that nothing here looks at.
const fastifyOf = (tls: Pair | null): FastifyInstance =>
  tls === null ? fastify(SETTINGS) : fastify({ ...SETTINGS, https: { cert: tls.cert, key: tls.key } })

/** The server, ready to be asked by `inject` or to listen. Closing it ends its streams; the storage stays open. */
export const buildServer = async (options: ServerOptions): Promise<FastifyInstance> => {
  const { storage, clock, log, singleUser, appFolder = APP_FOLDER, setUpCode = null, tls = null } = options
  const app = fastifyOf(tls)
  // A page elsewhere may send text/plain without asking first; JSON it may not.
  app.removeContentTypeParser('text/plain')
  handleErrors(app, log)
  await addSecurityHeaders(app)
  await limitRates(app, singleUser)
  askWho(app, options)
  const looked = { journal: storage.journal, stillIn: () => stillIn(storage, clock()) }
  const hub = liveHub(looked, (error) =>
    log({ level: 'error', message: `the journals could not be looked at: ${String(error)}` }),
  )
  endStreams(app, hub)
  const weather = weatherService({
    storage,
    operators: options.weatherProvider ?? null,
    asker: { patience: options.weatherPatience ?? USUAL_PATIENCE, clock, pause },
  })
  const passwordCost = options.passwordCost ?? COST
  registerRoutes(
    app,
    handlersOf({
      storage,
      hub,
      clock,
      weather,
      reader: journalReader(storage.journal),
      attempts: attempts(clock),
      setUpCode,
      passwordCost,
    }),
  )
  await serveApp(app, appFolder)
  await app.ready()
  return app
}
