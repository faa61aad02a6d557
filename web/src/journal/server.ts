import { requestFor, type RouteArguments, type RouteName, type RouteOutput } from '@swardwright/journal'

/** What became of a call: the answer, or that the server could not be reached or would not answer. */
export type Answer<N extends RouteName> =
  | { readonly ok: true; readonly value: RouteOutput<N> }
  | { readonly ok: false; readonly why: 'away' }
  | { readonly ok: false; readonly why: 'refused'; readonly status: number }

/** Calls a route of the server. */
export type CallServer = <N extends RouteName>(
  name: N,
  args: Partial<RouteArguments<N>>,
) => Promise<Answer<N>>

/** Calls by the browser’s own fetch. A server that stumbles (5xx) counts as away: it is tried again. */
export const callServer: CallServer = async (name, args) => {
  const { method, url, body } = requestFor(name, args)
  try {
    const response = await fetch(url, {
      method,
      body,
      headers: body === null ? {} : { 'content-type': 'application/json' },
    })
    if (response.status >= 500) return { ok: false, why: 'away' }
    if (!response.ok) return { ok: false, why: 'refused', status: response.status }
    // Both ends are built from the one table of routes.
    return { ok: true, value: (await response.json()) as RouteOutput<typeof name> }
  } catch {
    return { ok: false, why: 'away' }
  }
}
