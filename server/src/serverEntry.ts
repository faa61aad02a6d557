import { randomBytes } from 'node:crypto'
import {
  KINDS,
  UUID_RANDOM_BYTES,
  judgeEntry,
  momentFromMs,
  uuidV7,
  type BodyOf,
  type Entry,
  type KindName,
} from '@swardwright/journal'
import type { ArrivingEntry } from './storage/storage.ts'

/** What the server itself has to record. */
export type Seed = { readonly [K in KindName]: { readonly kind: K; readonly body: BodyOf<K> } }[KindName]

/** An entry that the server writes. It is judged like anybody's, so that the server never holds what a device could not have sent. */
export const serverEntry = (
  course: string,
  seed: Seed,
  { author, atMs }: { readonly author: string; readonly atMs: number },
): ArrivingEntry => {
  const at = momentFromMs(atMs)
  const entry: Entry = {
    id: uuidV7({ nowMs: atMs, random: randomBytes(UUID_RANDOM_BYTES) }),
    course,
    device: 'server',
    author,
    at,
    recordedAt: at,
    kind: seed.kind,
    version: KINDS[seed.kind].version,
    body: { ...seed.body },
  }
  const judged = judgeEntry(entry, { course, role: 'manager', nowMs: atMs })
  if (!judged.ok) throw new Error(`the server made an entry that is refused: ${JSON.stringify(judged.error)}`)
  return { entry: judged.value, receivedAt: at, sender: 'server', skewMs: null }
}
