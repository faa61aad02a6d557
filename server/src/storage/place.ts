import type { Cursor } from '@swardwright/journal'
import type { JournalStore, KeptEntry } from './storage.ts'

/** The place behind an entry. */
export const placeOf = ({ seq, entry, receivedAt }: KeptEntry): Cursor => ({
  seq,
  id: entry.id,
  receivedMs: Date.parse(receivedAt),
})

/**
 * Whether the very entry still lies at this place. One that was sent anew after the server was put back from a backup may have come to lie under
 * its old number again, behind others than before: it was then taken in at another moment.
 */
export const isHere = async (journal: JournalStore, course: string, cursor: Cursor): Promise<boolean> => {
  const [kept] = await journal.page(course, cursor.seq - 1, 1)
  if (kept?.seq !== cursor.seq || kept.entry.id !== cursor.id) return false
  return cursor.receivedMs === null || cursor.receivedMs === placeOf(kept).receivedMs
}
