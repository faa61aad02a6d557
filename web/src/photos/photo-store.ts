import type { BodyOf } from '@swardwright/journal'

/** What the entry of a photo says. */
export type PhotoBody = BodyOf<'photoTaken'>

/** The bytes of a photo or of its thumbnail: JPEG. */
export type PhotoBytes = Uint8Array<ArrayBuffer>

/** A photo as it is kept, or its thumbnail for strips. */
export type PhotoSize = 'file' | 'thumb'

/** A photo that was just taken on this device. */
export type NewPhoto = {
  readonly course: string
  readonly body: PhotoBody
  readonly file: PhotoBytes
  readonly thumb: PhotoBytes
  /** When it was taken, epoch milliseconds. */
  readonly atMs: number
}

/** A photo that the server does not have yet, as far as this device knows. */
export type WaitingPhoto = {
  readonly course: string
  readonly sha256: string
  readonly bytes: number
  /** When it was kept here, epoch milliseconds. */
  readonly keptMs: number
  /** What its entry will say and when it was taken; null once the entry is in the journal. */
  readonly untold: { readonly body: PhotoBody; readonly atMs: number } | null
  /** False while its entry is struck: then it is not sent. */
  readonly wanted: boolean
  /** Why the server would not take it, in a sentence; null while it may still be sent. */
  readonly refused: string | null
}

/** A photo on its way into the queue. */
export const newWaiting = (
  place: Pick<WaitingPhoto, 'course' | 'sha256' | 'bytes'>,
  untold: WaitingPhoto['untold'],
  keptMs: number,
): WaitingPhoto => ({ ...place, keptMs, untold, wanted: true, refused: null })

/**
 * Where a device keeps photos. One that `add` has resolved for survives the device being switched off. Photos that were sent, or came from
 * the server, are kept while there is room; those that wait are never dropped.
 */
export type PhotoStore = {
  /** Keeps a photo, its thumbnail and its place in the queue: all or none. Rejects where there is no room. */
  add(photo: NewPhoto, nowMs: number): Promise<void>
  /** Courses of which photos wait. */
  courses(): Promise<readonly string[]>
  /** Photos of a course that wait, oldest first. */
  waiting(course: string): Promise<readonly WaitingPhoto[]>
  /** Changes what is known of a photo that waits; null takes it out of the queue. */
  settle(
    course: string,
    sha256: string,
    change: Partial<Pick<WaitingPhoto, 'untold' | 'wanted' | 'refused'>> | null,
  ): Promise<void>
  /** Queues every photo again whose file is here: the server was put back from a backup. */
  sendAgain(course: string, nowMs: number): Promise<void>
  read(course: string, sha256: string, size: PhotoSize, nowMs: number): Promise<PhotoBytes | null>
  /** Keeps what came from the server, while there is room. */
  keep(
    place: { readonly course: string; readonly sha256: string; readonly size: PhotoSize },
    bytes: PhotoBytes,
    nowMs: number,
  ): Promise<void>
  /** Lets go of everything that the server has too. */
  makeRoom(): Promise<void>
}

/** What lies on the shelf, without its bytes. */
export type Shelved = {
  readonly course: string
  readonly sha256: string
  readonly size: PhotoSize
  readonly bytes: number
  /** When it was last looked at, to the hour, epoch milliseconds. */
  readonly usedMs: number
}

/** The most that is kept of photos that the server has too, bytes: some 150 photos, and the thumbnails of far more. */
export const SHELF_BYTES: Readonly<Record<PhotoSize, number>> = { file: 60_000_000, thumb: 20_000_000 }

/** Looking at a photo is noted once in so long, so that reading seldom writes. */
export const USED_GRAIN_MS = 60 * 60 * 1000

/** What has to go so that each size keeps to its bound: what was longest not looked at goes first, what is `held` stays. */
export const shelvedToDrop = (
  shelf: readonly Shelved[],
  isHeld: (one: Shelved) => boolean,
  most: Readonly<Record<PhotoSize, number>> = SHELF_BYTES,
): readonly Shelved[] => {
  const left = { ...most }
  return shelf
    .filter((one) => !isHeld(one))
    .toSorted((a, b) => b.usedMs - a.usedMs)
    .filter((one) => {
      left[one.size] -= one.bytes
      return left[one.size] < 0
    })
}
