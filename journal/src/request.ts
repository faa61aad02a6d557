import { assert } from './assert.ts'
import type { Route } from './route.ts'
import { ROUTES, type RouteArguments, type RouteName } from './routes.ts'

/** A request ready to be sent: relative address, and the body as JSON text. */
export type RouteRequest = {
  readonly method: Route['method']
  readonly url: string
  readonly body: string | null
}

const filledPath = (path: string, params: Readonly<Record<string, unknown>>): string =>
  path.replace(/:([a-zA-Z][a-zA-Z0-9]*)/gu, (_, name: string) => {
    const value = params[name]
    assert(typeof value === 'string' && value !== '', `the path needs ${name}`)
    return encodeURIComponent(value)
  })

const queryText = (query: Readonly<Record<string, unknown>>): string => {
  const pairs = Object.entries(query).filter(([, value]) => value !== undefined)
  return pairs.length === 0
    ? ''
    : `?${pairs.map(([key, value]) => `${key}=${encodeURIComponent(String(value))}`).join('&')}`
}

/** The request that calls a route, for whatever sends it (`fetch` in a browser, `inject` in a test). */
export const requestFor = <N extends RouteName>(
  name: N,
  args: Partial<RouteArguments<N>> = {},
): RouteRequest => {
  const { method, path, body }: Route = ROUTES[name]
  return {
    method,
    url: filledPath(path, args.params ?? {}) + queryText(args.query ?? {}),
    body: body === null ? null : JSON.stringify(args.body ?? {}),
  }
}
