import { ok } from '@swardwright/engine'
import { SERVER_VERSION } from '../version.ts'
import type { Context } from './context.ts'
import type { Handler } from './registrar.ts'

/** Answers when the store answers. */
export const health =
  ({ storage }: Context): Handler<'health'> =>
  async () => {
    await storage.journal.courses()
    return ok({ status: 'ok', version: SERVER_VERSION })
  }
