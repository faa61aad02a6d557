import { fail, ok, type Result } from '@swardwright/engine'
import type { Role } from '@swardwright/journal'
import { needsSetUp, type Access } from '../access/access.ts'
import { cookieOf } from '../access/cookie.ts'
import { FORGOTTEN_AFTER_MS } from '../access/attempts.ts'
import { PASS_LASTS_S, createPass, findPass, isGood, newAccessId, type PassFor } from '../access/passes.ts'
import { NO_PASSWORD, hashPassword, isPassword } from '../access/passwords.ts'
import { isSetUpCode } from '../access/setUpCode.ts'
import { auditTo, type AccessChange } from '../audit.ts'
import type { ApiError } from '../errors.ts'
import { nameKey, type AccountRow } from '../storage/people.ts'
import { courseOf, type Context } from './context.ts'
import type { Handler, Http } from './registrar.ts'

/** Roles whose access a deputy may give and take. */
const UNDER_DEPUTY: readonly Role[] = ['crew', 'committee']

const mayManage = (access: Access, role: Role): boolean =>
  access.role === 'manager' || (access.role === 'deputy' && UNDER_DEPUTY.includes(role))

/** Whether an access that opens `course`, or all where that is null, is for this one to give and take. */
const isWithin = (access: Access, course: string | null): boolean =>
  access.course === null || access.course === course

/** Writes down who let whom in or out. */
export const audit = (
  context: Context,
  access: Access,
  change: AccessChange,
  course: string | null,
): Promise<void> => auditTo(context, { author: access.name ?? 'Course manager', change, course })

/** Makes a pass and hands it to the browser as a cookie. */
const letIn = async (context: Context, http: Http, wanted: PassFor): Promise<{ readonly id: string }> => {
  const { secret, row } = await createPass(context.storage.passes, wanted, context.clock())
  http.set('Set-Cookie', cookieOf(secret, { maxAgeS: PASS_LASTS_S[wanted.kind], isSecure: http.isSecure }))
  return row
}

const sessionFor = ({ id, role, name }: Pick<AccountRow, 'id' | 'role' | 'name'>): PassFor => ({
  kind: 'session',
  role,
  name,
  account: id,
  course: null,
})

const TOO_MANY_GUESSES = { type: 'tooManyGuesses', minutes: FORGOTTEN_AFTER_MS / 60_000 } as const

/** Guesses of one kind from one address, and of one secret from anywhere, counted together. */
const guarded = async <T>(
  { attempts }: Context,
  keys: readonly string[],
  work: () => Promise<Result<T, ApiError>>,
): Promise<Result<T, ApiError>> => {
  if (!keys.every((key) => attempts.mayTry(key))) return fail(TOO_MANY_GUESSES)
  const result = await work()
  if (!result.ok) for (const key of keys) attempts.failed(key)
  return result
}

const livingAccounts = async ({ storage }: Context): Promise<readonly AccountRow[]> =>
  (await storage.accounts.list()).filter((account) => account.endedAt === null)

/** Says who is asking. */
export const who =
  (context: Context): Handler<'who'> =>
  async ({ access: { role, name, by } }) =>
    ok({ role, name, by, needsSetUp: await needsSetUp(context.storage) })

/** Makes the first account. At the machine itself no code is asked for: who sits there is the manager already. */
export const setUp =
  (context: Context): Handler<'setUp'> =>
  async ({ body, access, http }) => {
    const { storage, clock, attempts } = context
    if (!(await needsSetUp(storage))) return fail({ type: 'alreadySetUp' })
    const key = 'set-up'
    if (!attempts.mayTry(key)) return fail(TOO_MANY_GUESSES)
    if (access.by !== 'machine' && !isSetUpCode(body.code ?? '', context.setUpCode)) {
      attempts.failed(key)
      return fail({ type: 'wrongCode' })
    }
    const account = { id: newAccessId(), name: body.name, role: 'manager' } as const
    const secret = await hashPassword(body.password, context.passwordCost)
    const createdAt = new Date(clock()).toISOString()
    const isMade = await storage.accounts.add({ ...account, secret, createdAt }, { onlyFirst: true })
    if (!isMade) return fail({ type: 'alreadySetUp' })
    await letIn(context, http, sessionFor(account))
    const { id, name, role } = account
    await auditTo(context, {
      author: name,
      change: { change: 'managerSetUp', access: id, name, role },
      course: null,
    })
    return ok({ name, role })
  }

/** Logs in with name and password. */
export const logIn =
  (context: Context): Handler<'logIn'> =>
  ({ body, http }) =>
    guarded(context, [`name ${nameKey(body.name)}`, `address ${http.address}`], async () => {
      const account = (await livingAccounts(context)).find((one) => nameKey(one.name) === nameKey(body.name))
      const isRight = await isPassword(body.password, account?.secret ?? NO_PASSWORD)
      if (account === undefined || !isRight) return fail({ type: 'wrongPassword' })
      await letIn(context, http, sessionFor(account))
      return ok({ name: account.name, role: account.role })
    })

/** Ends the pass of this browser. */
export const logOut =
  ({ storage, clock }: Context): Handler<'logOut'> =>
  async ({ access, http }) => {
    http.set('Set-Cookie', cookieOf('', { maxAgeS: 0, isSecure: http.isSecure }))
    const ended =
      access.pass !== null && (await storage.passes.end(access.pass, new Date(clock()).toISOString()))
    return ok({ ended })
  }

/** Changes a password, ends every log-in with the old one, and logs this browser in anew. */
export const changePassword =
  (context: Context): Handler<'changePassword'> =>
  ({ body, access, http }) =>
    guarded(context, [`account ${access.account ?? http.address}`], async () => {
      const { storage, clock } = context
      const account = (await livingAccounts(context)).find((one) => one.id === access.account)
      if (account === undefined) return fail({ type: 'noAccount' })
      if (!(await isPassword(body.old, account.secret))) return fail({ type: 'wrongPassword' })
      await storage.accounts.setSecret(account.id, await hashPassword(body.new, context.passwordCost))
      await storage.passes.endOfAccount(account.id, new Date(clock()).toISOString())
      await letIn(context, http, sessionFor(account))
      const { id, name, role } = account
      await audit(context, access, { change: 'passwordChanged', access: id, name, role }, null)
      return ok({ name, role })
    })

/** Uses a join link. Of two who use one at once, one is in. */
export const join =
  (context: Context): Handler<'join'> =>
  ({ body, http }) =>
    guarded(context, [`address ${http.address}`], async () => {
      const { storage, clock } = context
      const invite = await findPass(storage.passes, body.token, { kinds: ['invite'], nowMs: clock() })
      if (invite === null || !(await storage.passes.end(invite.id, new Date(clock()).toISOString())))
        return fail({ type: 'linkUnknown' })
      const { role, name, course } = invite
      const { id } = await letIn(context, http, { kind: 'device', role, name, account: null, course })
      await auditTo(context, {
        author: name,
        change: { change: 'deviceJoined', access: id, name, role },
        course,
      })
      return ok({ name, role })
    })

/** Lists who may come in now. */
export const people =
  (context: Context): Handler<'people'> =>
  async ({ access }) => {
    const passes = (await context.storage.passes.list()).filter(
      (pass) => isGood(pass, context.clock()) && isWithin(access, pass.course),
    )
    const listed = (kind: 'device' | 'invite') =>
      passes
        .filter((pass) => pass.kind === kind)
        .map(({ id, role, name, course, createdAt, expiresAt }) => ({
          id,
          role,
          name,
          course,
          since: createdAt,
          until: expiresAt,
        }))
    const living = isWithin(access, null) ? await livingAccounts(context) : []
    const accounts = living.map(({ id, role, name, createdAt }) => ({
      id,
      role,
      name,
      since: createdAt,
    }))
    return ok({ accounts, devices: listed('device'), links: listed('invite') })
  }

/** Makes an account. Before the manager has one there is none for others: else the machine itself would be locked by somebody else. */
export const addAccount =
  (context: Context): Handler<'addAccount'> =>
  async ({ body, access }) => {
    const { storage, clock } = context
    const { name, role } = body
    if (access.course !== null) return fail({ type: 'oneCourseOnly' })
    if (role !== 'manager' && (await needsSetUp(storage))) return fail({ type: 'setUpFirst' })
    const id = newAccessId()
    const secret = await hashPassword(body.password, context.passwordCost)
    const createdAt = new Date(clock()).toISOString()
    const isMade = await storage.accounts.add({ id, name, role, secret, createdAt }, { onlyFirst: false })
    if (!isMade) return fail({ type: 'nameTaken', name })
    await audit(context, access, { change: 'accountMade', access: id, name, role }, null)
    return ok({ id })
  }

/** Makes a join link. */
export const addLink =
  (context: Context): Handler<'addLink'> =>
  async ({ body, access }) => {
    const { name, role } = body
    if (!mayManage(access, role)) return fail({ type: 'notYours', role })
    const course = body.course ?? access.course
    if (!isWithin(access, course)) return fail({ type: 'oneCourseOnly' })
    if (course !== null) {
      const found = await courseOf(context, course)
      if (!found.ok) return found
    }
    const wanted = { kind: 'invite', role, name, account: null, course } as const
    const { secret, row } = await createPass(context.storage.passes, wanted, context.clock())
    await audit(context, access, { change: 'joinLinkMade', access: row.id, name, role }, course)
    return ok({ id: row.id, token: secret, until: row.expiresAt })
  }

/** Ends an account with its log-ins, a device or a link. The last manager's account stays: else nobody could let anybody in. */
export const endAccess =
  (context: Context): Handler<'endAccess'> =>
  async ({ params: { id }, access }) => {
    const { storage, clock } = context
    const at = new Date(clock()).toISOString()
    const accounts = await livingAccounts(context)
    const account = accounts.find((one) => one.id === id)
    const pass = (await storage.passes.list()).find(
      (one) => one.id === id && one.kind !== 'page' && isGood(one, clock()),
    )
    const found = account ?? pass
    const course = pass?.course ?? null
    if (found === undefined || !isWithin(access, course)) return fail({ type: 'accessUnknown', id })
    const { name, role } = found
    if (!mayManage(access, role)) return fail({ type: 'notYours', role })
    if (account?.role === 'manager' && accounts.filter((one) => one.role === 'manager').length === 1)
      return fail({ type: 'lastManager' })
    const ended = await (account === undefined ? storage.passes : storage.accounts).end(id, at)
    if (account !== undefined) await storage.passes.endOfAccount(id, at)
    if (ended) await audit(context, access, { change: 'accessEnded', access: id, name, role }, course)
    return ok({ ended })
  }
