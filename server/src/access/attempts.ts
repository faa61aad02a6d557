/** Counts wrong guesses, and says when it is enough. Lives as long as the server. */
export type Attempts = {
  readonly mayTry: (key: string) => boolean
  readonly failed: (key: string) => void
}

/** Wrong guesses allowed for one name, one address or one code. */
export const FAILURES_MAX = 10

/** After this long they are forgotten, ms. */
export const FORGOTTEN_AFTER_MS = 15 * 60_000

/** Names and addresses remembered, at most: somebody who tries millions of names must not fill the memory. */
const KEYS_MAX = 10_000

/** Makes a counter. */
export const attempts = (clock: () => number): Attempts => {
  const failures = new Map<string, readonly number[]>()
  const recent = (key: string): readonly number[] =>
    (failures.get(key) ?? []).filter((atMs) => atMs > clock() - FORGOTTEN_AFTER_MS)
  return {
    mayTry: (key) => recent(key).length < FAILURES_MAX,
    failed: (key) => {
      const [oldest] = failures.keys()
      if (failures.size >= KEYS_MAX && oldest !== undefined) failures.delete(oldest)
      const now = [...recent(key), clock()]
      failures.delete(key)
      failures.set(key, now)
    },
  }
}
