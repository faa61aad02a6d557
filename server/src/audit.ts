import { cursorText, type BodyOf } from '@swardwright/journal'
import type { Context } from './routes/context.ts'
import { serverEntry } from './serverEntry.ts'
import type { Storage } from './storage/storage.ts'

/** Who may come in, as it changed. */
export type AccessChange = BodyOf<'accessChanged'>

/** A change of access, who made it, and which course it is about; null where it is about all. */
type AccessTold = {
  readonly author: string
  readonly change: AccessChange
  readonly course: string | null
}

/**
 * Writes a change of access into the journal of the course that it opens, or of every course, so that nobody comes or goes unseen. `onEnd` hears
 * the new end of each journal; another process on the same storage finds it by itself.
 */
export const auditIn = async (
  { journal }: Pick<Storage, 'journal'>,
  { author, change, course, atMs }: AccessTold & { readonly atMs: number },
  onEnd: (course: string, cursor: string) => void = () => undefined,
): Promise<void> => {
  for (const { id } of await journal.courses()) {
    if (course !== null && id !== course) continue
    const arriving = serverEntry(id, { kind: 'accessChanged', body: change }, { author, atMs })
    const { end } = await journal.append(id, [arriving], null)
    onEnd(id, cursorText(end))
  }
}

/** The same by a running server, which tells open readers at once. */
export const auditTo = ({ storage, hub, clock }: Context, told: AccessTold): Promise<void> =>
  auditIn(storage, { ...told, atMs: clock() }, (course, cursor) => hub.tell(course, cursor))
