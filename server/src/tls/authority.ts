import { X509Certificate, createPrivateKey, generateKeyPairSync, type KeyObject } from 'node:crypto'
import { isIP } from 'node:net'
import { fail, ok, type Result } from '@swardwright/engine'
import { certificate, type Party } from './certificate.ts'

const DAY_MS = 24 * 60 * 60 * 1000

/** How long an authority lasts: phones are set up for it by hand, so seldom. */
const AUTHORITY_DAYS = 3650

/** How long a server's certificate lasts: iPhones take none that lasts longer than 825 days. */
const SERVER_DAYS = 820

/** Clocks of phones may be behind by this much. */
const BEHIND_MS = DAY_MS

/** A certificate and its key, both PEM. */
export type Pair = { readonly cert: string; readonly key: string }

/** Why a certificate can't be made or used. */
export type TlsError =
  | { readonly type: 'badHost'; readonly host: string }
  | { readonly type: 'badCertificate' }
  | { readonly type: 'badKey' }
  | { readonly type: 'notItsKey' }
  | { readonly type: 'expired'; readonly until: string }

const newKey = (): KeyObject => generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey

const pemOf = (key: KeyObject): string => String(key.export({ type: 'pkcs8', format: 'pem' }))

/** Whether something is the name or the address (version 4) of a machine, as a certificate has it. */
const isHost = (host: string): boolean =>
  isIP(host) === 4 ||
  (/^(?=.{1,253}$)[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?(?:\.[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?)*$/u.test(
    host,
  ) &&
    !/^[\d.]+$/u.test(host))

/** A local authority: phones that trust it trust the club's server, and nothing else by it. */
export const newAuthority = (hosts: readonly string[], nowMs: number): Pair => {
  const key = newKey()
  const self: Party = { name: 'Swardwright of this club', key }
  const times = { fromMs: nowMs - BEHIND_MS, untilMs: nowMs + AUTHORITY_DAYS * DAY_MS }
  return {
    cert: certificate({ ...times, subject: self, issuer: self, hosts, isAuthority: true }),
    key: pemOf(key),
  }
}

const commonName = (cert: X509Certificate): string => /^CN=(.*)$/mu.exec(cert.subject)?.[1] ?? ''

/** A certificate for a server, signed by an authority, with the authority's own behind it. */
export const newServerPair = (
  authority: Pair,
  hosts: readonly string[],
  nowMs: number,
): Result<Pair, TlsError> => {
  const bad = hosts.find((host) => !isHost(host))
  const [first] = hosts
  if (bad !== undefined || first === undefined) return fail({ type: 'badHost', host: bad ?? '' })
  const checked = checkPair(authority, nowMs)
  if (!checked.ok) return checked
  const key = newKey()
  const issued = certificate({
    subject: { name: first, key },
    issuer: { name: commonName(checked.value), key: createPrivateKey(authority.key) },
    fromMs: nowMs - BEHIND_MS,
    untilMs: nowMs + SERVER_DAYS * DAY_MS,
    hosts,
    isAuthority: false,
  })
  return ok({ cert: issued + authority.cert, key: pemOf(key) })
}

const read = <T>(work: () => T): T | null => {
  try {
    return work()
  } catch {
    // OpenSSL's words say nothing to a person; the error of the caller does.
    return null
  }
}

/** The certificate of a pair that can be served with, or what is wrong with it. */
export const checkPair = ({ cert, key }: Pair, nowMs: number): Result<X509Certificate, TlsError> => {
  const certificateRead = read(() => new X509Certificate(cert))
  if (certificateRead === null) return fail({ type: 'badCertificate' })
  const keyRead = read(() => createPrivateKey(key))
  if (keyRead === null) return fail({ type: 'badKey' })
  if (!certificateRead.checkPrivateKey(keyRead)) return fail({ type: 'notItsKey' })
  const until = Date.parse(certificateRead.validTo)
  return until > nowMs ? ok(certificateRead) : fail({ type: 'expired', until: new Date(until).toISOString() })
}
