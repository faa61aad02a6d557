import { randomBytes } from 'node:crypto'
import { ok } from '@swardwright/engine'
import type { Context } from './context.ts'
import type { Handler } from './registrar.ts'

/** Lists the courses. */
export const listCourses =
  ({ storage }: Context): Handler<'courses'> =>
  async () =>
    ok(await storage.journal.courses())

/** Makes a course; its id says nothing, since names change. */
export const addCourse =
  ({ storage }: Context): Handler<'addCourse'> =>
  async ({ body }) => {
    const row = { id: `c-${randomBytes(8).toString('hex')}`, name: body.name }
    await storage.journal.addCourse(row)
    return ok(row)
  }
