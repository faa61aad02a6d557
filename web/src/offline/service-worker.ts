/**
 * Keeps the app on the device, so that it opens without a line. It keeps the app's own files and nothing else: what people record lies in
 * the journal's database, and calls of the API never pass through here. A new version waits until a page says that it may take over.
 */
import { asksServerFirst, cacheName, cachesToDrop, isScreenPath, type Shell } from './shell.ts'
import type { ToServiceWorker } from './shell.ts'

declare const self: ServiceWorkerGlobalScope

/** Put in by the build. */
declare const __SHELL__: Shell

const shell = __SHELL__
const CACHE = cacheName(shell.version)
const FIRST_PAGE = '/index.html'

/** Files under `assets` never change under their name, so the browser's own copy will do; all others are asked for anew. */
const fetchFile = async (path: string): Promise<Response> => {
  const response = await fetch(path, { cache: path.startsWith('/assets/') ? 'default' : 'reload' })
  if (!response.ok) throw new Error(`${path} could not be kept: the server said ${response.status}`)
  return response
}

/** Browsers open about six lines to a server; half of them are left to the page, which is at work already. */
const LANES = 3

const keepShell = async (): Promise<void> => {
  const cache = await caches.open(CACHE)
  const left = [...shell.kept]
  const keepNext = async (): Promise<void> => {
    for (let path = left.shift(); path !== undefined; path = left.shift())
      await cache.put(path, await fetchFile(path))
  }
  await Promise.all(Array.from({ length: LANES }, keepNext))
}

const dropOld = async (): Promise<void> => {
  const old = cachesToDrop(await caches.keys(), shell.version)
  await Promise.all(old.map((name) => caches.delete(name)))
}

/** From this version, else from one before it that a page still stands on, else from the server. */
const fileFor = async (request: Request, path: string): Promise<Response> => {
  const cache = await caches.open(CACHE)
  const kept = (await cache.match(path)) ?? (await caches.match(path))
  if (kept !== undefined) return kept
  const response = await fetch(request)
  if (response.ok && shell.onUse.includes(path)) await cache.put(path, response.clone())
  return response
}

const screenFor = async (request: Request): Promise<Response> => {
  if (asksServerFirst(self.location.hostname)) {
    const fresh = await fetch(request).catch(() => null)
    if (fresh !== null && fresh.status < 500) return fresh
  }
  const cache = await caches.open(CACHE)
  return (await cache.match(FIRST_PAGE)) ?? fetch(request)
}

self.addEventListener('install', (event) => event.waitUntil(keepShell()))

self.addEventListener('activate', (event) => event.waitUntil(dropOld().then(() => self.clients.claim())))

self.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  if (request.method !== 'GET' || url.origin !== self.location.origin) return
  const path = url.pathname
  if (request.mode === 'navigate') {
    if (isScreenPath(path)) event.respondWith(screenFor(request))
  } else if (path.startsWith('/assets/') || shell.kept.includes(path)) {
    event.respondWith(fileFor(request, path))
  }
})

self.addEventListener('message', (event) => {
  const asked = event.data as ToServiceWorker
  if (asked.say === 'take over') event.waitUntil(self.skipWaiting())
  else event.ports[0]?.postMessage(shell.kept.includes(asked.path))
})
