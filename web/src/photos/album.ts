import { idbPhotos } from './idb-photos.ts'
import { memoryPhotos } from './memory-photos.ts'
import { photoQueue, type PhotoQueue } from './photo-queue.ts'
import { fetchPhoto, putPart } from './photo-server.ts'
import type { NewPhoto, PhotoBody, PhotoBytes, PhotoSize, PhotoStore, WaitingPhoto } from './photo-store.ts'
import type { ReadyPhoto } from './make-ready.ts'
import { thumbOf } from './shrink.ts'

/** What the album of a course needs from the page. */
export type AlbumHolder = {
  readonly course: string
  /** Whether this page deals with the server. */
  readonly isMine: () => boolean
  /** Whether an entry that stands speaks of this photo. */
  readonly isWanted: (sha256: string) => boolean
  /** Writes the entry of a photo into the journal. */
  readonly record: (body: PhotoBody, atMs: number) => Promise<string>
  /** All that waits, whenever it changes. */
  readonly waiting: (photos: readonly WaitingPhoto[]) => void
}

/** What a photo is of: its entry without what the file itself says. */
export type PhotoOf = Omit<PhotoBody, 'sha256' | 'type' | 'bytes' | 'widthPx' | 'heightPx'>

/** A photo to look at, or why there is none. */
export type Looked =
  | { readonly got: 'photo'; readonly bytes: PhotoBytes }
  | { readonly got: 'notYet' }
  | { readonly got: 'away' }

/** The photos of one course on this device. */
export type Album = {
  /** Keeps a photo and writes its entry. False where the device has no room; then no entry is written. */
  readonly keep: (ready: ReadyPhoto, of: PhotoOf, atMs: number) => Promise<boolean>
  readonly look: (sha256: string, size: PhotoSize) => Promise<Looked>
  /** Sends what waits, if this page is the one that does. */
  readonly send: (lineIsBack: boolean) => Promise<void>
  /** Lets the server be asked anew about a photo that it refused. */
  readonly tryAgain: () => Promise<void>
  /** Says that other entries stand than before: a photo that was taken out is not sent, one put back is. */
  readonly entriesChanged: () => Promise<void>
  /** The server was put back from a backup: what is here is offered to it again. */
  readonly sendAgain: () => Promise<void>
  /** The bytes of a photo that waits, so that a person can save them elsewhere. */
  readonly fileOf: (sha256: string) => Promise<PhotoBytes | null>
}

/** So long may another page take between keeping a photo and writing its entry. */
const UNTOLD_MS = 60_000

/** At once from the server: a poor line is shared with what is recorded. */
const FETCHES_MOST = 2

const openStore = (): Promise<PhotoStore> => idbPhotos().catch(() => memoryPhotos())

/** Runs no more than so many tasks at a time; the rest wait their turn. */
const atMost = (most: number) => {
  let running = 0
  const waiting: (() => void)[] = []
  return async <T>(task: () => Promise<T>): Promise<T> => {
    if (running >= most) await new Promise<void>((go) => void waiting.push(go))
    running += 1
    try {
      return await task()
    } finally {
      running -= 1
      waiting.shift()?.()
    }
  }
}

/** Tells the other pages of this browser that the queue has changed, and hears it from them: one of them sends. Null where the browser has no such line. */
const joinAlbums = (onChange: () => void): (() => void) | null => {
  if (!('BroadcastChannel' in globalThis)) return null
  const channel = new BroadcastChannel('swardwright-photos')
  channel.addEventListener('message', onChange)
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has no target; it never leaves this origin
  return () => channel.postMessage('changed')
}

/** Gets photos from the shelf, else from the server, each once however many places ask for it. */
const lookOver = (store: PhotoStore, course: string): Album['look'] => {
  const inTurn = atMost(FETCHES_MOST)
  const fetching = new Map<string, ReturnType<typeof fetchPhoto>>()
  const fromServer = (sha256: string): ReturnType<typeof fetchPhoto> => {
    const known = fetching.get(sha256)
    if (known !== undefined) return known
    const asked = inTurn(() => fetchPhoto(course, sha256)).finally(() => fetching.delete(sha256))
    fetching.set(sha256, asked)
    return asked
  }
  // The shelf is only a help: a photo that finds no room on it is shown all the same.
  const shelve = (sha256: string, size: PhotoSize, bytes: PhotoBytes): Promise<void> =>
    store.keep({ course, sha256, size }, bytes, Date.now()).catch(() => undefined)
  return async (sha256, size) => {
    const here = await store.read(course, sha256, size, Date.now())
    if (here !== null) return { got: 'photo', bytes: here }
    const file = await store.read(course, sha256, 'file', Date.now())
    const fetched = file === null ? await fromServer(sha256) : { got: 'photo' as const, bytes: file }
    if (fetched.got !== 'photo') return fetched
    if (file === null) await shelve(sha256, 'file', fetched.bytes)
    if (size === 'file') return fetched
    const thumb = await thumbOf(fetched.bytes).catch(() => fetched.bytes)
    await shelve(sha256, 'thumb', thumb)
    return { got: 'photo', bytes: thumb }
  }
}

/** Writes the entries of photos that were kept just before their page went. */
const tellUntold = async (store: PhotoStore, holder: AlbumHolder): Promise<void> => {
  const { course } = holder
  for (const { sha256, untold, keptMs } of await store.waiting(course)) {
    if (untold === null || Date.now() - keptMs < UNTOLD_MS) continue
    if (!holder.isWanted(sha256)) await holder.record(untold.body, untold.atMs)
    await store.settle(course, sha256, { untold: null })
  }
}

/** Keeps a photo where there is room, if need be by letting go of what the server has too. */
const addWithRoom = async (store: PhotoStore, photo: NewPhoto): Promise<boolean> => {
  const add = (): Promise<boolean> =>
    store.add(photo, Date.now()).then(
      () => true,
      () => false,
    )
  if (await add()) return true
  await store.makeRoom().catch(() => undefined)
  return add()
}

/** Notes which photos of the open course have an entry that stands. Other courses keep what was noted while they were open. */
const noteWanted = async (store: PhotoStore, { course, isWanted }: AlbumHolder): Promise<void> => {
  for (const { sha256, untold, wanted } of await store.waiting(course))
    if (untold === null && wanted !== isWanted(sha256))
      await store.settle(course, sha256, { wanted: !wanted })
}

/** The queue of a course, of this one or another of which photos wait. */
const queueOf = (
  store: PhotoStore,
  course: string,
  on: { readonly isMine: () => boolean; readonly changed: () => Promise<void> },
): PhotoQueue => {
  let inHand: { readonly sha256: string; readonly file: PhotoBytes | null } | null = null
  /** One photo goes in several parts: it is read once. */
  const fileOf = async (sha256: string): Promise<PhotoBytes | null> => {
    if (inHand?.sha256 !== sha256)
      inHand = { sha256, file: await store.read(course, sha256, 'file', Date.now()) }
    return inHand.file
  }
  return photoQueue({
    course,
    store,
    putFor: (sha256) => async (part) => {
      const file = await fileOf(sha256)
      if (file === null) return { got: 'refused', words: 'Its file is not on this device any more.' }
      return putPart({ course, sha256 }, file, part)
    },
    nowMs: Date.now,
    later: (afterMs, task) => {
      setTimeout(task, afterMs)
    },
    isMine: on.isMine,
    changed: async () => {
      inHand = null
      await on.changed()
    },
  })
}

/** Opens the album of a course. */
export const openAlbum = async (holder: AlbumHolder): Promise<Album> => {
  const { course } = holder
  const store = await openStore()
  const show = async (): Promise<void> => {
    await noteWanted(store, holder)
    holder.waiting(await store.waiting(course))
  }
  const heard = async (): Promise<void> => {
    await show()
    await queue.run()
  }
  const tellPages = joinAlbums(() => void heard())
  const changed = async (): Promise<void> => {
    await show()
    tellPages?.()
  }
  const queues = new Map<string, PhotoQueue>()
  const queueFor = (of: string): PhotoQueue => {
    const queue = queues.get(of) ?? queueOf(store, of, { isMine: holder.isMine, changed })
    queues.set(of, queue)
    return queue
  }
  const queue = queueFor(course)
  await show()
  return {
    keep: async ({ file, thumb, sha256, widthPx, heightPx }, of, atMs) => {
      const body: PhotoBody = { sha256, type: 'image/jpeg', bytes: file.length, widthPx, heightPx, ...of }
      if (!(await addWithRoom(store, { course, body, file, thumb, atMs }))) return false
      const isTold = await holder.record(body, atMs).then(
        () => true,
        () => false,
      )
      if (isTold) await store.settle(course, sha256, { untold: null })
      await changed()
      void queue.run()
      return isTold
    },
    look: lookOver(store, course),
    send: async (lineIsBack) => {
      if (!holder.isMine()) return
      await tellUntold(store, holder)
      await queue.run(lineIsBack)
      // What was taken while another course was open goes too.
      for (const other of await store.courses()) if (other !== course) await queueFor(other).run(lineIsBack)
    },
    entriesChanged: heard,
    tryAgain: async () => {
      for (const { sha256, refused } of await store.waiting(course))
        if (refused !== null) await store.settle(course, sha256, { refused: null })
      await changed()
      await queue.run(true)
    },
    sendAgain: async () => {
      await store.sendAgain(course, Date.now())
      await changed()
      await queue.run(true)
    },
    fileOf: (sha256) => store.read(course, sha256, 'file', Date.now()),
  }
}
