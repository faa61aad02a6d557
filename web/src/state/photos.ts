import { computed, effect, signal } from '@preact/signals'
import type { Album } from '../photos/album.ts'
import type { WaitingPhoto } from '../photos/photo-store.ts'
import { courseId, facts } from './journal.ts'
import { record } from './record.ts'

const queued = signal<readonly WaitingPhoto[]>([])

const shown = computed(
  (): ReadonlySet<string> => new Set(facts.value.photos.map(({ value }) => value.sha256)),
)

/** Photos that the server does not have yet. One that was taken out again before it was sent does not count. */
export const photosWaiting = computed(() =>
  queued.value.filter(({ sha256, untold }) => untold !== null || shown.value.has(sha256)),
)

/** Photos that the server would not take; they stay here and need somebody’s attention. */
export const photosRefused = computed(() => photosWaiting.value.filter(({ refused }) => refused !== null))

/** Whether this page deals with the server; the exchange of the course says. */
let dealsWithServer = (): boolean => false

const albums = new Map<string, Promise<Album>>()

const open = async (course: string): Promise<Album> => {
  const { openAlbum } = await import('../photos/album.ts')
  return openAlbum({
    course,
    isMine: () => dealsWithServer(),
    isWanted: (sha256) => shown.value.has(sha256),
    record: (body, atMs) => record('photoTaken', body, atMs),
    waiting: (photos) => {
      queued.value = photos
    },
  })
}

/** The album of the open course. What keeps and sends photos is loaded only now; rejects where it can’t be. */
export const album = (): Promise<Album> => {
  const course = courseId.value
  if (course === null) return Promise.reject(new Error('no course is open'))
  const opened = albums.get(course) ?? open(course)
  albums.set(course, opened)
  // Over plain http without a line there is nothing to load it from; the next one to ask tries again.
  opened.catch(() => albums.delete(course))
  return opened
}

/** Reads what waits, once the page stands, and follows what is taken out or put back. */
export const readPhotos = (): void => {
  setTimeout(() => {
    album().catch(() => undefined)
  }, 500)
  effect(() => {
    // Read for the sake of following it.
    void shown.value
    if (queued.peek().length === 0) return
    void album()
      .then((opened) => opened.entriesChanged())
      .catch(() => undefined)
  })
}

/** Sends what waits, after an exchange with the server. `lineIsBack`: there was none before. */
export const postPhotos = (isMine: () => boolean, lineIsBack: boolean): void => {
  dealsWithServer = isMine
  void album()
    .then((opened) => opened.send(lineIsBack))
    .catch(() => undefined)
}

/** Offers the server again what is here: it was put back from a backup. */
export const photosAgain = (): void => {
  void album()
    .then((opened) => opened.sendAgain())
    .catch(() => undefined)
}
