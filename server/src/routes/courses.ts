import { randomBytes } from 'node:crypto'
import { fail, ok } from '@swardwright/engine'
import { plantDemoAs } from '../demo.ts'
import type { Context } from './context.ts'
import type { Handler } from './registrar.ts'

/** Lists the courses. */
export const listCourses =
  ({ storage }: Context): Handler<'courses'> =>
  async ({ access }) => {
    const courses = await storage.journal.courses()
    return ok(access.course === null ? courses : courses.filter(({ id }) => id === access.course))
  }

/** Makes a course; its id says nothing, since names change. */
export const addCourse =
  ({ storage, clock }: Context): Handler<'addCourse'> =>
  async ({ body, access }) => {
    if (access.course !== null) return fail({ type: 'oneCourseOnly' })
    const row = { id: `c-${randomBytes(8).toString('hex')}`, name: body.name }
    if (body.from === 'demo') await plantDemoAs(storage, row, clock())
    else await storage.journal.addCourse(row)
    return ok(row)
  }
