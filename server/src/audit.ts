import { cursorText, type BodyOf } from '@swardwright/journal'
import type { Context } from './routes/context.ts'
import { serverEntry } from './serverEntry.ts'

/** Who may come in, as it changed. */
export type AccessChange = BodyOf<'accessChanged'>

/** Writes a change of access into the journal of every course kept here, so that nobody comes or goes unseen. */
export const auditTo = async (
  { storage, hub, clock }: Context,
  { author, change }: { readonly author: string; readonly change: AccessChange },
): Promise<void> => {
  for (const { id } of await storage.journal.courses()) {
    const arriving = serverEntry(id, { kind: 'accessChanged', body: change }, { author, atMs: clock() })
    const { end } = await storage.journal.append(id, [arriving], null)
    hub.tell(id, cursorText(end))
  }
}
