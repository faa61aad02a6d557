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
import type { Readable } from 'node:stream'
import type { Access } from '../access/access.ts'
import { errorAnswer, type ApiError } from '../errors.ts'

type PartOf<S> = S extends v.GenericSchema ? v.InferOutput<S> : null

/** A request that was let in and checked. */
export type Call<N extends RouteName> = {
  readonly params: PartOf<(typeof ROUTES)[N]['params']>
  readonly query: PartOf<(typeof ROUTES)[N]['query']>
  readonly body: PartOf<(typeof ROUTES)[N]['body']>
  readonly access: Access
}

type Answered<N extends RouteName> = (typeof ROUTES)[N]['answer'] extends 'events' ? Readable : RouteOutput<N>

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
const callOf = (route: Route, request: FastifyRequest, access: Access): Result<Call<RouteName>, ApiError> => {
  const params = checked(route.params, request.params, 'path')
  if (!params.ok) return params
  const query = checked(route.query, request.query, 'query')
  if (!query.ok) return query
  const body = checked(route.body, request.body, 'body')
  if (!body.ok) return body
  // The schemas of this very route have just accepted the parts.
  return ok({ params: params.value, query: query.value, body: body.value, access } as Call<RouteName>)
}

/** Answers with an error of the catalogue. */
export const sendError = (reply: FastifyReply, error: ApiError): FastifyReply => {
  const { status, body } = errorAnswer(error)
  if (status === 401) void reply.header('WWW-Authenticate', 'Bearer')
  return reply.code(status).header('Cache-Control', 'no-store').send(body)
}

const EVENT_STREAM = {
  'Content-Type': 'text/event-stream; charset=utf-8',
  'X-Accel-Buffering': 'no',
} as const

/** Registers every route of the table: let in by its rule, checked by its schemas, answered by its handler. */
export const registerRoutes = (app: FastifyInstance, handlers: Handlers): void => {
  for (const [name, route] of Object.entries(ROUTES) as [RouteName, Route][]) {
    const handler = handlers[name] as unknown as Handler<RouteName>
    app.route({
      method: route.method,
      url: route.path,
      handler: async (request, reply) => {
        const { access } = request
        if (access === null) throw new Error('a request reached a route before anyone asked who it is')
        const refusal = refusalOf(route, access)
        if (refusal !== null) return sendError(reply, refusal)
        const call = callOf(route, request, access)
        if (!call.ok) return sendError(reply, call.error)
        const result = await handler(call.value)
        if (!result.ok) return sendError(reply, result.error)
        void reply.header('Cache-Control', 'no-store')
        if (route.answer === 'events') void reply.headers(EVENT_STREAM)
        return reply.send(result.value)
      },
    })
  }
}
