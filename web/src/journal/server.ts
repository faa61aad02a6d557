import { requestFor, type RouteArguments, type RouteName, type RouteOutput } from '@swardwright/journal'

/** What became of a call: the answer, or that the server could not be reached or would not answer. */
export type Answer<N extends RouteName> =
  | { readonly ok: true; readonly value: RouteOutput<N> }
  | { readonly ok: false; readonly why: 'away' }
  | {
      readonly ok: false
      readonly why: 'refused'
      readonly status: number
      /** The server’s own sentence. */
      readonly words: string
    }

/** Calls a route of the server. */
export type CallServer = <N extends RouteName>(
  name: N,
  args: Partial<RouteArguments<N>>,
) => Promise<Answer<N>>

const wordsIn = async (response: Response): Promise<string> => {
  const body: unknown = await response.json().catch(() => null)
  const error = typeof body === 'object' && body !== null && 'error' in body ? body.error : null
  const hasWords = typeof error === 'object' && error !== null && 'message' in error
  return hasWords ? String(error.message) : `The server said no (${response.status})`
}

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
    if (!response.ok)
      return { ok: false, why: 'refused', status: response.status, words: await wordsIn(response) }
    // Both ends are built from the one table of routes.
    return { ok: true, value: (await response.json()) as RouteOutput<typeof name> }
  } catch {
    return { ok: false, why: 'away' }
  }
}
