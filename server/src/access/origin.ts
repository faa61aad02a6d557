import type { FastifyRequest } from 'fastify'
import { isLoopbackName } from './loopback.ts'

/** Methods that change nothing. */
const READS: readonly string[] = ['GET', 'HEAD', 'OPTIONS']

const urlOf = (text: string): URL | null => (URL.canParse(text) ? new URL(text) : null)

/**
 * The foreign page behind a request that would change something, or null when there is none. Browsers send `Origin` with each POST;
 * scripts send none. On a single user's machine its own pages on other ports count as ours: the app under development is one.
 */
export const foreignOrigin = (request: FastifyRequest, singleUser: boolean): string | null => {
  const { origin } = request.headers
  if (READS.includes(request.method) || origin === undefined) return null
  const url = urlOf(origin)
  if (url === null) return origin
  const isOurs = url.host === request.host || (singleUser && isLoopbackName(url.hostname))
  return isOurs ? null : origin
}

/** Whether a request would change something and names no page: browsers name theirs, so one with a cookie and no page is a trick. */
export const isNamelessChange = (request: FastifyRequest): boolean =>
  !READS.includes(request.method) && request.headers.origin === undefined
