import { ok } from '@swardwright/engine'
import { cursorText } from '@swardwright/journal'
import { courseOf, type Context } from './context.ts'
import type { Handler } from './registrar.ts'

/** Opens a stream that tells the end of the journal now and whenever it moves. Opened first, then read, so that no push falls between. */
export const live =
  (context: Context): Handler<'live'> =>
  async ({ params, access }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const stream = context.hub.open(params.course, access)
    context.hub.send(stream, cursorText(await context.storage.journal.end(params.course)))
    return ok(stream)
  }
