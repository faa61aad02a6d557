import { signal } from '@preact/signals'
import type { ToServiceWorker } from '../offline/shell.ts'
import { carryTyped } from './carry-typed.ts'
import { fetchAhead } from './fetch-ahead.ts'

const LOOK_EVERY_MS = 60 * 60 * 1000
const SETTLE_MS = 300

/** Takes a version of the app over that is ready; null while this page is the newest. */
export const takeNewVersion = signal<(() => void) | null>(null)

/** How far the app is kept on this device for use without a line; null where the browser cannot keep it. */
export const appKept = signal<'not yet' | 'kept' | null>(null)

const tell = (worker: ServiceWorker, message: ToServiceWorker, ports: MessagePort[] = []): void =>
  worker.postMessage(message, ports)

/** Where a page was opened from the server after a new build, it is of the version that waits already. */
const isOfThisPage = (worker: ServiceWorker): Promise<boolean> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.addEventListener('message', (event: MessageEvent<boolean>) => resolve(event.data))
    port1.start()
    const script = document.querySelector<HTMLScriptElement>('script[type=module][src]')
    tell(worker, { say: 'stands on', path: new URL(script?.src ?? '/', location.href).pathname }, [port2])
  })

/** Leaving the last field hands on what is in it; a moment later that is kept. What nobody handed on is carried over. */
const reload = (): void => {
  setTimeout(() => {
    carryTyped()
    location.reload()
  }, SETTLE_MS)
}

const offer = async (waiting: ServiceWorker): Promise<void> => {
  if (await isOfThisPage(waiting)) return tell(waiting, { say: 'take over' })
  takeNewVersion.value = () => {
    navigator.serviceWorker.addEventListener('controllerchange', reload, { once: true })
    tell(waiting, { say: 'take over' })
  }
}

const follow = (registration: ServiceWorkerRegistration): void => {
  const look = (): void => {
    if (registration.waiting !== null && registration.active !== null) void offer(registration.waiting)
  }
  look()
  registration.addEventListener('updatefound', () =>
    registration.installing?.addEventListener('statechange', look),
  )
  const ask = (): void => void registration.update().catch(() => undefined)
  setInterval(ask, LOOK_EVERY_MS)
  addEventListener('online', ask)
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') ask()
  })
}

/** Another page of this browser took a new version over: this one goes on as it is, and may follow when it likes. */
const followOthers = (): void => {
  const compare = async (controller: ServiceWorker): Promise<void> => {
    takeNewVersion.value = (await isOfThisPage(controller)) ? null : reload
  }
  let hadOne = navigator.serviceWorker.controller !== null
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    const { controller } = navigator.serviceWorker
    if (hadOne && controller !== null) void compare(controller)
    hadOne = true
  })
}

/** Has the app kept on this device, and watches for new versions of it. Over plain http browsers keep none; its files are then fetched ahead. */
export const keepApp = async (): Promise<void> => {
  if (!import.meta.env.PROD) return
  if (!('serviceWorker' in navigator)) return fetchAhead()
  appKept.value = 'not yet'
  followOthers()
  try {
    follow(await navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }))
    await navigator.serviceWorker.ready
    appKept.value = 'kept'
  } catch {
    // A private window or a person's own setting forbids it: the app then needs the server to open, as the settings page says.
    appKept.value = null
    await fetchAhead()
  }
}
