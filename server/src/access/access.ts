import type { FastifyRequest } from 'fastify'
import { fail, ok, type Result } from '@swardwright/engine'
import type { Role } from '@swardwright/journal'
import type { ApiError } from '../errors.ts'
import type { TokenStore } from '../storage/storage.ts'
import { isLoopbackAddress, isLoopbackName } from './loopback.ts'
import { tokenHash } from './tokens.ts'

/** Who is asking: a role (null without log-in), and the name of the access for the record. */
export type Access = { readonly role: Role | null; readonly sender: string }

/** What decides who is asking. */
export type AccessRules = {
  readonly tokens: TokenStore
  /** True when the server listens on this machine only: then somebody at this machine is the manager. */
  readonly singleUser: boolean
}

/** Headers by which a proxy says that the request came from elsewhere. */
const FORWARDING = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'via'] as const

/**
 * Whether a request really comes from somebody at this machine: from a loopback address, to a loopback name, through no proxy.
 * The name is checked since a page elsewhere can point a name of its own at 127.0.0.1.
 */
export const isFromThisMachine = (request: FastifyRequest): boolean =>
  isLoopbackAddress(request.ip) &&
  isLoopbackName(request.hostname) &&
  FORWARDING.every((header) => request.headers[header] === undefined)

/** Who is asking. Fails when a token is sent that is not, or no longer, good: that is never quietly somebody else. */
export const accessOf = async (
  request: FastifyRequest,
  { tokens, singleUser }: AccessRules,
): Promise<Result<Access, ApiError>> => {
  const header = request.headers.authorization
  if (header !== undefined) {
    const token = /^Bearer ([\w.~+/=-]{1,200})$/iu.exec(header)?.[1]
    const row = token === undefined ? null : await tokens.findByHash(tokenHash(token))
    return row === null ? fail({ type: 'tokenUnknown' }) : ok({ role: row.role, sender: `token:${row.id}` })
  }
  return ok(
    singleUser && isFromThisMachine(request)
      ? { role: 'manager', sender: 'local' }
      : { role: null, sender: 'public' },
  )
}
