import { fail, ok } from '@swardwright/engine'
import { cursorText, parseCursor, type Cursor } from '@swardwright/journal'
import { isHere, placeOf } from '../storage/place.ts'
import type { KeptEntry } from '../storage/storage.ts'
import { courseOf, type Context } from './context.ts'
import type { Handler } from './registrar.ts'

const storedEntry = ({ entry, seq, receivedAt, skewMs }: KeptEntry) => ({
  ...entry,
  seq,
  receivedAt,
  ...(skewMs === null ? {} : { skewMs }),
})

/** Gives entries after a cursor, or from the beginning where the cursor is of a journal that is no longer here (rule J28). */
export const pullEntries =
  (context: Context): Handler<'pullEntries'> =>
  async ({ params, query }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const after = parseCursor(query.after)
    const seen = parseCursor(query.seen)
    if (after === undefined || seen === undefined)
      return fail({
        type: 'badRequest',
        where: 'query',
        field: after === undefined ? 'after' : 'seen',
        expected: 'a cursor as an answer gave it, or 0 for the beginning',
      })
    const { journal } = context.storage
    const isGone = async (cursor: Cursor | null): Promise<boolean> =>
      cursor !== null && !(await isHere(journal, params.course, cursor))
    const reset = (await isGone(after)) || (await isGone(seen))
    const from = after === null || reset ? null : after
    const kept = await journal.page(params.course, from?.seq ?? 0, query.limit + 1)
    const page = kept.slice(0, query.limit)
    const last = page.at(-1)
    return ok({
      entries: page.map(storedEntry),
      cursor: cursorText(last === undefined ? from : placeOf(last)),
      more: kept.length > query.limit,
      reset,
    })
  }
