import { fail, ok, type Result } from '@swardwright/engine'
import { momentFromMs, type WeatherProblem } from '@swardwright/journal'

/** How patiently a service is asked. */
export type Patience = {
  /** Longest wait for one whole answer, ms. */
  readonly timeOutMs: number
  /** Tries in all. */
  readonly tries: number
  /** Pause before the second try, ms; it doubles with each further one. */
  readonly pauseMs: number
  /** Most that is read of an answer, bytes. */
  readonly maxBytes: number
}

/** A person waits for the page: two tries, each of a few seconds. An ensemble of fifty members over two weeks is about 6 MB. */
export const USUAL_PATIENCE: Patience = { timeOutMs: 8_000, tries: 2, pauseMs: 400, maxBytes: 24_000_000 }

/** What asking needs of the outside. */
export type Asker = {
  readonly patience: Patience
  readonly clock: () => number
  readonly pause: (ms: number) => Promise<void>
}

/** Reads a body up to a limit; null when it is longer. */
const bodyWithin = async (response: Response, maxBytes: number): Promise<string | null> => {
  const declared = Number(response.headers.get('content-length') ?? 0)
  if (declared > maxBytes) {
    await response.body?.cancel()
    return null
  }
  const reader = response.body?.getReader()
  if (reader === undefined) return ''
  const decoder = new TextDecoder()
  let bytes = 0
  let text = ''
  for (;;) {
    const { done, value } = await reader.read()
    if (done) return text + decoder.decode()
    bytes += value.length
    if (bytes > maxBytes) {
      await reader.cancel()
      return null
    }
    text += decoder.decode(value, { stream: true })
  }
}

/** Retry-After as an instant, epoch ms: seconds, or a date (RFC 9110 section 10.2.3). Null when there is none that can be read. */
const retryAtMs = (response: Response, nowMs: number): number | null => {
  const text = response.headers.get('retry-after')
  if (text === null) return null
  const ms = /^\d+$/u.test(text.trim()) ? nowMs + Number(text) * 1000 : Date.parse(text)
  return Number.isFinite(ms) && Math.abs(ms) < 8.64e15 ? ms : null
}

const isTimeOut = (error: unknown): boolean =>
  error instanceof Error && (error.name === 'TimeoutError' || error.name === 'AbortError')

/** One try. A refusal with a body that says why (HTTP 400 with JSON) is read like an answer, so that the reason reaches people. */
const tryOnce = async (
  address: string,
  { patience, clock }: Asker,
): Promise<Result<string, WeatherProblem>> => {
  const { timeOutMs, maxBytes } = patience
  try {
    const response = await fetch(address, {
      headers: { accept: 'application/json' },
      signal: AbortSignal.timeout(timeOutMs),
    })
    if (response.status === 429) {
      await response.body?.cancel()
      const retryAt = retryAtMs(response, clock())
      return fail({ type: 'tooOften', retryAt: retryAt === null ? null : momentFromMs(retryAt) })
    }
    const body = await bodyWithin(response, maxBytes)
    if (body === null) return fail({ type: 'tooLarge', maxBytes })
    const says = response.headers.get('content-type') ?? ''
    if (!response.ok && !(response.status === 400 && says.includes('json')))
      return fail({ type: 'status', status: response.status })
    return ok(body)
  } catch (error) {
    return fail(isTimeOut(error) ? { type: 'timedOut', afterMs: timeOutMs } : { type: 'unreachable' })
  }
}

/** Whether another try, so soon, may help. A service that asks to be left alone is left alone; one that hangs would only keep people waiting. */
const isWorthAnother = (problem: WeatherProblem): boolean =>
  problem.type === 'unreachable' || (problem.type === 'status' && problem.status >= 500)

/** Asks an address, again after a pause where that may help; the last problem when none of the tries does. */
export const askService = async (address: string, asker: Asker): Promise<Result<string, WeatherProblem>> => {
  const { tries, pauseMs } = asker.patience
  for (let attempt = 1; ; attempt++) {
    const answer = await tryOnce(address, asker)
    if (answer.ok || attempt >= tries || !isWorthAnother(answer.error)) return answer
    await asker.pause(pauseMs * 2 ** (attempt - 1))
  }
}
