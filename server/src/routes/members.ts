import { createHash } from 'node:crypto'
import { fail, ok, readForecast } from '@swardwright/engine'
import {
  MEMBERS_NOT_FOUND,
  MEMBERS_PAGE_CSS,
  membersHtml,
  membersPage,
  type MembersPage,
} from '@swardwright/present'
import { createPass, findPass, isGood } from '../access/passes.ts'
import type { PassRow } from '../storage/people.ts'
import { audit } from './access.ts'
import { courseOf, type Context } from './context.ts'
import type { Handler, Http } from './registrar.ts'

/** Name under which a page stands in the record of access. */
const NAME = 'Members’ page'

const base64 = (text: string): string => createHash('sha256').update(text).digest('base64')

/** Nothing but the page's own style sheet is let in: no script, no picture, no frame around it. */
const POLICY = `default-src 'none'; style-src 'sha256-${base64(MEMBERS_PAGE_CSS)}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`

/** How long a browser may show a page without asking again, seconds. */
const FRESH_S = 60

/** What every answer at such an address carries, found or not. */
const setHeaders = ({ set }: Http): void => {
  set('Content-Security-Policy', POLICY)
  set('Referrer-Policy', 'no-referrer')
  set('X-Robots-Tag', 'noindex, nofollow, noarchive')
}

const livePages = async ({ storage, clock }: Context, course: string): Promise<readonly PassRow[]> =>
  (await storage.passes.list()).filter(
    (pass) => pass.kind === 'page' && pass.course === course && isGood(pass, clock()),
  )

const endPages = async (context: Context, course: string): Promise<readonly PassRow[]> => {
  const { storage, clock } = context
  const at = new Date(clock()).toISOString()
  const ended: PassRow[] = []
  for (const page of await livePages(context, course))
    if (await storage.passes.end(page.id, at)) ended.push(page)
  return ended
}

/** Says whether a course has a members' page. */
export const membersPageOf =
  (context: Context): Handler<'membersPage'> =>
  async ({ params }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const page = (await livePages(context, params.course)).at(-1)
    return ok({ page: page === undefined ? null : { id: page.id, since: page.createdAt } })
  }

/** Opens the page at a new address and ends the one before. */
export const openMembersPage =
  (context: Context): Handler<'openMembersPage'> =>
  async ({ params, access }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    for (const { id } of await endPages(context, params.course))
      await audit(context, access, { change: 'membersPageClosed', access: id, name: NAME }, params.course)
    const wanted = {
      kind: 'page',
      role: 'committee',
      name: NAME,
      account: null,
      course: params.course,
    } as const
    const { secret, row } = await createPass(context.storage.passes, wanted, context.clock())
    await audit(context, access, { change: 'membersPageOpened', access: row.id, name: NAME }, params.course)
    return ok({ id: row.id, key: secret, since: row.createdAt })
  }

/** Closes the page. */
export const closeMembersPage =
  (context: Context): Handler<'closeMembersPage'> =>
  async ({ params, access }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const ended = await endPages(context, params.course)
    for (const { id } of ended)
      await audit(context, access, { change: 'membersPageClosed', access: id, name: NAME }, params.course)
    return ok({ ended: ended.length > 0 })
  }

/** What stands at an address now; null where it leads nowhere, or the course has no greens yet. */
const pageAt = async (context: Context, key: string): Promise<MembersPage | null> => {
  const { storage, clock, reader } = context
  const pass = await findPass(storage.passes, key, { kinds: ['page'], nowMs: clock() })
  if (pass?.course == null) return null
  const facts = await reader.factsOf(pass.course)
  const { course, forecast } = facts
  if (course === null) return null
  const read = forecast === null ? null : readForecast(forecast.value.forecast)
  return membersPage({
    course,
    facts,
    weather: read?.ok === true ? read.value.weather : null,
    nowMs: course.now === null ? clock() : Date.parse(course.now),
  })
}

/** Lets a browser keep the answer for a moment, and tells it when nothing has changed. True where it has it already. */
const isKnown = (http: Http, text: string): boolean => {
  const tag = `"${base64(text).slice(0, 27)}"`
  http.set('Cache-Control', `private, max-age=${FRESH_S}, must-revalidate`)
  http.set('ETag', tag)
  const known = (http.header('if-none-match') ?? '').split(',').map((one) => one.trim().replace(/^W\//u, ''))
  return known.includes(tag)
}

const addressOf = ({ header, isSecure }: Http, key: string): string | null => {
  const host = header('host')
  return host === undefined ? null : `${isSecure ? 'https' : 'http'}://${host}/greens/${key}`
}

/** The page itself. */
export const readMembersPage =
  (context: Context): Handler<'readMembersPage'> =>
  async ({ params: { key }, http }) => {
    setHeaders(http)
    const page = await pageAt(context, key)
    if (page === null) {
      http.status(404)
      return ok(MEMBERS_NOT_FOUND)
    }
    const html = membersHtml(page, addressOf(http, key))
    if (!isKnown(http, html)) return ok(html)
    http.status(304)
    return ok('')
  }

/** The same as data. A club's own site may read it from its pages. */
export const readMembersData =
  (context: Context): Handler<'readMembersData'> =>
  async ({ params: { key }, http }) => {
    setHeaders(http)
    const page = await pageAt(context, key)
    if (page === null) return fail({ type: 'pageUnknown' })
    http.set('Access-Control-Allow-Origin', '*')
    // A copy, since the table of routes says what goes out.
    const data = { ...page, greens: [...page.greens], days: [...page.days] }
    if (isKnown(http, JSON.stringify(data))) http.status(304)
    return ok(data)
  }
