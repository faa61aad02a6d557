import { createHash, createPublicKey, randomBytes, sign, type KeyObject } from 'node:crypto'
import { isIP } from 'node:net'
import {
  bareField,
  bits,
  field,
  identifier,
  integer,
  octets,
  sequence,
  setOf,
  time,
  trueValue,
  utf8,
} from './der.ts'

/** Private networks (RFC 1918) as address and mask: with those names an authority of a club may speak for them. */
const PRIVATE_NETWORKS = [
  [10, 0, 0, 0, 255, 0, 0, 0],
  [172, 16, 0, 0, 255, 240, 0, 0],
  [192, 168, 0, 0, 255, 255, 0, 0],
] as const

/** Names that never leave a network: RFC 6762 (local), RFC 8375 (home.arpa), ICANN's reservation of internal, and the usual lan. */
const PRIVATE_NAMES = ['local', 'home.arpa', 'internal', 'lan'] as const

const ECDSA_WITH_SHA256 = sequence(identifier('1.2.840.10045.4.3.2'))

/** Who a certificate is of or by. */
export type Party = { readonly name: string; readonly key: KeyObject }

/** A certificate to be made. */
export type CertificateFor = {
  readonly subject: Party
  readonly issuer: Party
  readonly fromMs: number
  readonly untilMs: number
  /** Names and addresses: of a server those it answers to; of an authority those it may speak for, beside private ones. */
  readonly hosts: readonly string[]
  readonly isAuthority: boolean
}

const nameOf = (name: string) => sequence(setOf(sequence(identifier('2.5.4.3'), utf8(name))))

/** Bytes of an address of version 4; other addresses are refused before this. */
const addressBytes = (address: string): Buffer => Buffer.from(address.split('.').map(Number))

const publicKeyOf = (key: KeyObject): Buffer => createPublicKey(key).export({ type: 'spki', format: 'der' })

/** Identifier of a key: SHA-1 of it, a name and no protection (RFC 5280, section 4.2.1.2; here over the whole key info). */
const keyId = (key: KeyObject): Buffer => createHash('sha1').update(publicKeyOf(key)).digest()

type Extension = { readonly id: string; readonly isCritical: boolean; readonly value: Buffer }

const extension = ({ id, isCritical, value }: Extension) =>
  sequence(identifier(id), ...(isCritical ? [trueValue()] : []), octets(value))

/** What an authority may speak for. A phone that trusts it can so never be shown a false bank. */
const permitted = (hosts: readonly string[]): Buffer => {
  const names = [...PRIVATE_NAMES, ...hosts.filter((host) => isIP(host) === 0)]
  const networks: readonly (readonly number[])[] = [
    ...PRIVATE_NETWORKS,
    ...hosts.filter((host) => isIP(host) === 4).map((host) => [...addressBytes(host), 255, 255, 255, 255]),
  ]
  const subtrees = [
    ...names.map((name) => sequence(bareField(2, Buffer.from(name)))),
    ...networks.map((network) => sequence(bareField(7, Buffer.from(network)))),
  ]
  return sequence(field(0, ...subtrees))
}

const authorityExtensions = ({ hosts }: CertificateFor): readonly Extension[] => [
  { id: '2.5.29.19', isCritical: true, value: sequence(trueValue(), integer(Buffer.from([0]))) },
  // keyCertSign and cRLSign: bits 5 and 6.
  { id: '2.5.29.15', isCritical: true, value: bits(Buffer.from([0b0000_0110]), 1) },
  { id: '2.5.29.30', isCritical: true, value: permitted(hosts) },
]

const serverExtensions = ({ hosts, issuer }: CertificateFor): readonly Extension[] => [
  { id: '2.5.29.19', isCritical: true, value: sequence() },
  // digitalSignature: bit 0.
  { id: '2.5.29.15', isCritical: true, value: bits(Buffer.from([0b1000_0000]), 7) },
  { id: '2.5.29.37', isCritical: false, value: sequence(identifier('1.3.6.1.5.5.7.3.1')) },
  {
    id: '2.5.29.17',
    isCritical: false,
    value: sequence(
      ...hosts.map((host) =>
        isIP(host) === 4 ? bareField(7, addressBytes(host)) : bareField(2, Buffer.from(host)),
      ),
    ),
  },
  { id: '2.5.29.35', isCritical: false, value: sequence(bareField(0, keyId(issuer.key))) },
]

const pem = (der: Buffer): string =>
  `-----BEGIN CERTIFICATE-----\n${(der.toString('base64').match(/.{1,64}/gu) ?? []).join('\n')}\n-----END CERTIFICATE-----\n`

/** A serial number: 16 random bytes, positive and not beginning with zero. */
const serialNumber = (): Buffer => {
  const bytes = randomBytes(16)
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40
  return bytes
}

/** An X.509 certificate of version 3 (RFC 5280) in PEM, signed with ECDSA over P-256. Node can read one, but not make one. */
export const certificate = (wanted: CertificateFor): string => {
  const { subject, issuer, fromMs, untilMs, isAuthority } = wanted
  const extensions: readonly Extension[] = [
    ...(isAuthority ? authorityExtensions(wanted) : serverExtensions(wanted)),
    { id: '2.5.29.14', isCritical: false, value: octets(keyId(subject.key)) },
  ]
  const content = sequence(
    field(0, integer(Buffer.from([2]))),
    integer(serialNumber()),
    ECDSA_WITH_SHA256,
    nameOf(issuer.name),
    sequence(time(fromMs), time(untilMs)),
    nameOf(subject.name),
    publicKeyOf(subject.key),
    field(3, sequence(...extensions.map(extension))),
  )
  const signature = sign('sha256', content, issuer.key)
  return pem(sequence(content, ECDSA_WITH_SHA256, bits(signature)))
}
