import type { FastifyRequest } from 'fastify'
import { fail, ok, type Result } from '@swardwright/engine'
import type { Role } from '@swardwright/journal'
import type { ApiError } from '../errors.ts'
import type { Storage } from '../storage/storage.ts'
import { passOfCookies } from './cookie.ts'
import { isLoopbackAddress, isLoopbackName } from './loopback.ts'
import { findPass } from './passes.ts'
import { tokenHash } from './tokens.ts'

/** Who is asking. */
export type Access = {
  /** Null without log-in. */
  readonly role: Role | null
  /** The name of the access for the record: `local`, `public`, `token:ID`, `account:ID`, `device:ID`. */
  readonly sender: string
  readonly by: 'nobody' | 'machine' | 'token' | 'session' | 'device'
  /** Name of the person, device or token; null where there is none. */
  readonly name: string | null
  /** Id of the pass, and of the account of a session. */
  readonly pass: string | null
  readonly account: string | null
  /** The one course that it sees; null for all. */
  readonly course: string | null
}

/** What decides who is asking. */
export type AccessRules = {
  readonly storage: Pick<Storage, 'tokens' | 'passes' | 'accounts'>
  /** True when the server listens on this machine only: then somebody at this machine is the manager, until there is an account. */
  readonly singleUser: boolean
  /** Epoch milliseconds. */
  readonly clock: () => number
}

/** Headers by which a proxy says that the request came from elsewhere. */
const FORWARDING = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'via'] as const

const NOBODY: Access = {
  role: null,
  sender: 'public',
  by: 'nobody',
  name: null,
  pass: null,
  account: null,
  course: null,
}

/**
 * Whether a request really comes from somebody at this machine: from a loopback address, to a loopback name, through no proxy.
 * The name is checked since a page elsewhere can point a name of its own at 127.0.0.1.
 */
export const isFromThisMachine = (request: FastifyRequest): boolean =>
  isLoopbackAddress(request.ip) &&
  isLoopbackName(request.hostname) &&
  FORWARDING.every((header) => request.headers[header] === undefined)

/** Whether the manager still has to make an account. */
export const needsSetUp = async ({ accounts }: Pick<Storage, 'accounts'>): Promise<boolean> =>
  (await accounts.list()).every((account) => account.endedAt !== null)

const byToken = async (header: string, { storage }: AccessRules): Promise<Result<Access, ApiError>> => {
  const token = /^Bearer ([\w.~+/=-]{1,200})$/iu.exec(header)?.[1]
  const row = token === undefined ? null : await storage.tokens.findByHash(tokenHash(token))
  if (row === null) return fail({ type: 'tokenUnknown' })
  const { id, role, name } = row
  return ok({ ...NOBODY, role, name, by: 'token', sender: `token:${id}` })
}

const byPass = async (secret: string, { storage, clock }: AccessRules): Promise<Access | null> => {
  const row = await findPass(storage.passes, secret, { kinds: ['session', 'device'], nowMs: clock() })
  if (row === null) return null
  const { id, role, name, account, course } = row
  return account === null
    ? { role, name, by: 'device', sender: `device:${id}`, pass: id, account, course }
    : { role, name, by: 'session', sender: `account:${account}`, pass: id, account, course }
}

/**
 * Who is asking. A token that is not, or no longer, good is an error: it is never quietly somebody else. A cookie that is no longer good is
 * nobody, so that its browser can come to the log-in.
 */
export const accessOf = async (
  request: FastifyRequest,
  rules: AccessRules,
): Promise<Result<Access, ApiError>> => {
  const header = request.headers.authorization
  if (header !== undefined) return byToken(header, rules)
  const secret = passOfCookies(request.headers.cookie)
  const known = secret === null ? null : await byPass(secret, rules)
  if (known !== null) return ok(known)
  if (rules.singleUser && isFromThisMachine(request) && (await needsSetUp(rules.storage)))
    return ok({ ...NOBODY, role: 'manager', sender: 'local', by: 'machine' })
  return ok(NOBODY)
}
