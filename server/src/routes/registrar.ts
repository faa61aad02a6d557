import { Readable } from 'node:stream'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import * as v from 'valibot'
import { fail, ok, type Result } from '@swardwright/engine'
import {
  ROUTES,
  isAllowed,
  issueFacts,
  type Route,
  type RouteName,
  type RouteOutput,
} from '@swardwright/journal'
import type { Access } from '../access/access.ts'
import { errorAnswer, type ApiError } from '../errors.ts'

type PartOf<S> = S extends v.GenericSchema ? v.InferOutput<S> : null

/** A request that was let in and checked. */
export type Call<N extends RouteName> = {
  readonly params: PartOf<(typeof ROUTES)[N]['params']>
  readonly query: PartOf<(typeof ROUTES)[N]['query']>
  readonly body: PartOf<(typeof ROUTES)[N]['body']>
  readonly access: Access
  readonly http: Http
}

/** What a few handlers need beyond the table: headers, cookies, files. */
export type Http = {
  /** A header of the request. */
  readonly header: (name: string) => string | undefined
  /** The body as it comes, of a route that takes bytes; empty for others. */
  readonly body: AsyncIterable<Uint8Array>
  /** Where the request comes from. */
  readonly address: string
  /** True over https, at this server or at its proxy. */
  readonly isSecure: boolean
  readonly set: (name: string, value: string) => void
  readonly status: (code: number) => void
}

type Answered<N extends RouteName> = (typeof ROUTES)[N]['answer'] extends 'events'
  ? Readable
  : (typeof ROUTES)[N]['answer'] extends 'bytes'
    ? Uint8Array
    : RouteOutput<N>

/** What does the work of a route. */
export type Handler<N extends RouteName> = (call: Call<N>) => Promise<Result<Answered<N>, ApiError>>

/** One handler for each route of the table: leaving one out does not compile. */
export type Handlers = { readonly [N in RouteName]: Handler<N> }

declare module 'fastify' {
  interface FastifyRequest {
    /** Set before any handler runs. */
    access: Access | null
  }
}

const refusalOf = (route: Route, access: Access): ApiError | null => {
  if (isAllowed(route.rule, access.role)) return null
  return access.role === null
    ? { type: 'loginNeeded' }
    : { type: 'roleNotAllowed', role: access.role, allowed: route.rule }
}

type Where = Extract<ApiError, { type: 'badRequest' }>['where']

const checked = (schema: v.GenericSchema | null, value: unknown, where: Where): Result<unknown, ApiError> => {
  if (schema === null) return ok(null)
  const parsed = v.safeParse(schema, value, { abortEarly: true })
  if (parsed.success) return ok(parsed.output)
  return fail({ type: 'badRequest', where, ...issueFacts(parsed.issues[0], where) })
}

/** The checked parts of a request, or the first thing wrong with it. */
const callOf = (
  route: Route,
  request: FastifyRequest,
  { access, http }: Pick<Call<RouteName>, 'access' | 'http'>,
): Result<Call<RouteName>, ApiError> => {
  const params = checked(route.params, request.params, 'path')
  if (!params.ok) return params
  const query = checked(route.query, request.query, 'query')
  if (!query.ok) return query
  const body = checked(route.body, request.body, 'body')
  if (!body.ok) return body
  // The schemas of this very route have just accepted the parts.
  const parts = { params: params.value, query: query.value, body: body.value }
  return ok({ ...parts, access, http } as Call<RouteName>)
}

/** Answers with an error of the catalogue. */
export const sendError = (reply: FastifyReply, error: ApiError): FastifyReply => {
  const { status, body } = errorAnswer(error)
  if (error.type === 'wrongOffset' && error.received > 0)
    void reply.header('Range', `bytes=0-${error.received - 1}`)
  if (error.type === 'rangeUnknown') void reply.header('Content-Range', `bytes */${error.length}`)
  if (status === 401) void reply.header('WWW-Authenticate', 'Bearer')
  return reply.code(status).header('Cache-Control', 'no-store').send(body)
}

const NO_BODY: AsyncIterable<Uint8Array> = Readable.from([])

const httpOf = (route: Route, request: FastifyRequest, reply: FastifyReply): Http => ({
  header: (name) => {
    const value = request.headers[name]
    return Array.isArray(value) ? value.join(', ') : value
  },
  body: route.takesBytes === true && request.body instanceof Readable ? request.body : NO_BODY,
  address: request.ip,
  isSecure: request.protocol === 'https',
  set: (name, value) => void reply.header(name, value),
  status: (code) => void reply.code(code),
})

/** A limit of a route's own holds for everybody, somebody at the machine itself too. */
const slowed = (perMinute: number) => ({
  rateLimit: { max: perMinute, timeWindow: 60_000, allowList: () => false },
})

/** Whether a request asks for a course that its access does not see. It is told that there is none, so that nobody learns of others. */
const hiddenCourse = (call: Call<RouteName>): string | null => {
  const { params, access } = call
  const course = params !== null && 'course' in params ? params.course : null
  return access.course !== null && course !== null && course !== access.course ? course : null
}

const EVENT_STREAM = {
  'Content-Type': 'text/event-stream; charset=utf-8',
  'X-Accel-Buffering': 'no',
} as const

const answer = async (
  { route, handler }: { readonly route: Route; readonly handler: Handler<RouteName> },
  request: FastifyRequest,
  reply: FastifyReply,
): Promise<FastifyReply> => {
  const { access } = request
  if (access === null) throw new Error('a request reached a route before anyone asked who it is')
  const refusal = refusalOf(route, access)
  if (refusal !== null) return sendError(reply, refusal)
  const call = callOf(route, request, { access, http: httpOf(route, request, reply) })
  if (!call.ok) return sendError(reply, call.error)
  const hidden = hiddenCourse(call.value)
  if (hidden !== null) return sendError(reply, { type: 'courseUnknown', course: hidden })
  const result = await handler(call.value)
  if (!result.ok) return sendError(reply, result.error)
  if (!reply.hasHeader('Cache-Control')) void reply.header('Cache-Control', 'no-store')
  if (route.answer === 'events') void reply.headers(EVENT_STREAM)
  if (route.answer === 'page') void reply.type('text/html; charset=utf-8')
  return reply.send(route.answer === 'bytes' ? Buffer.from(result.value as Uint8Array) : result.value)
}

/** Registers every route of the table: let in by its rule, checked by its schemas, answered by its handler. */
export const registerRoutes = (app: FastifyInstance, handlers: Handlers): void => {
  const all = Object.entries(ROUTES) as [RouteName, Route][]
  const add = (scope: FastifyInstance, [name, route]: [RouteName, Route]): void => {
    const handler = handlers[name] as unknown as Handler<RouteName>
    scope.route({
      method: route.method,
      url: route.path,
      ...(route.perMinute === undefined ? {} : { config: slowed(route.perMinute) }),
      handler: (request, reply) => answer({ route, handler }, request, reply),
    })
  }
  for (const one of all) if (one[1].takesBytes !== true) add(app, one)
  // Files come under any media type and are taken as they come, never read into memory whole.
  void app.register(async (scope) => {
    scope.removeAllContentTypeParsers()
    scope.addContentTypeParser('*', (_request, payload, done) => done(null, payload))
    for (const one of all) if (one[1].takesBytes === true) add(scope, one)
  })
}
