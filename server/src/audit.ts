import { cursorText, type BodyOf } from '@swardwright/journal'
import type { Context } from './routes/context.ts'
import { serverEntry } from './serverEntry.ts'

/** Who may come in, as it changed. */
export type AccessChange = BodyOf<'accessChanged'>

/** A change of access, who made it, and which course it is about; null where it is about all. */
type AccessTold = {
  readonly author: string
  readonly change: AccessChange
  readonly course: string | null
}

/** Writes a change of access into the journal of the course that it opens, or of every course, so that nobody comes or goes unseen. */
export const auditTo = async (
  { storage, hub, clock }: Context,
  { author, change, course }: AccessTold,
): Promise<void> => {
  for (const { id } of await storage.journal.courses()) {
    if (course !== null && id !== course) continue
    const arriving = serverEntry(id, { kind: 'accessChanged', body: change }, { author, atMs: clock() })
    const { end } = await storage.journal.append(id, [arriving], null)
    hub.tell(id, cursorText(end))
  }
}
