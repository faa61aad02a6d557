/** What a build of the app consists of, as the build itself lists it. */
export type Shell = {
  /** Hash over every file: another version is another shell. */
  readonly version: string
  /** Addresses that are kept at the first visit, all of them or none. */
  readonly kept: readonly string[]
  /** Addresses that are kept once they were used: the map for drawing outlines, which is larger than all the rest. */
  readonly onUse: readonly string[]
}

const PREFIX = 'swardwright '

/** Name of the cache that holds a version. */
export const cacheName = (version: string): string => `${PREFIX}${version}`

/**
 * Caches that a version throws away when it takes over: all of ours but its own and the newest before it, on which pages may still stand
 * that were open before.
 */
export const cachesToDrop = (names: readonly string[], version: string): readonly string[] => {
  const own = cacheName(version)
  const others = names.filter((name) => name.startsWith(PREFIX) && name !== own)
  return others.slice(0, -1)
}

/** Whether an address is one of the app’s own screens: no file, and nothing of the server’s. */
export const isScreenPath = (path: string): boolean =>
  !/^\/(?:api|health|greens)(?:\/|$)/u.test(path) && !/\.[^/]*$/u.test(path)

/** On the machine that serves the app the server is asked first, so that a fresh build shows at once. */
export const asksServerFirst = (hostname: string): boolean =>
  ['localhost', '127.0.0.1', '[::1]'].includes(hostname)

/** What a page says to a service worker. `stands on` asks whether the file belongs to its version; `take over` ends the waiting. */
export type ToServiceWorker =
  { readonly say: 'take over' } | { readonly say: 'stands on'; readonly path: string }
