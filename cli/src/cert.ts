import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Pair, TlsError } from '@swardwright/server'
import { BadInput, type Command } from './command.ts'
import { readOptions, required } from './options.ts'

/** Folder of certificates in the data folder. */
const FOLDER = 'tls'

/** What is wrong with a certificate, as one sentence. */
export const tlsErrorWords = (error: TlsError, files: string): string => {
  switch (error.type) {
    case 'badHost':
      return `--host is '${error.host}'; it must be a name in small letters such as greens.local, or an address such as 192.168.1.20; several with commas between`
    case 'badCertificate':
      return `${files}: this is no certificate in PEM form (-----BEGIN CERTIFICATE-----)`
    case 'badKey':
      return `${files}: this is no private key in PEM form without a pass phrase`
    case 'notItsKey':
      return `${files}: the key belongs to another certificate`
    case 'expired':
      return `${files}: the certificate ran out on ${error.until.slice(0, 10)}`
  }
}

const readPair = async (folder: string, name: string): Promise<Pair | null> => {
  try {
    const [cert, key] = await Promise.all(
      ['crt', 'key'].map((end) => readFile(join(folder, `${name}.${end}`), 'utf8')),
    )
    return cert === undefined || key === undefined ? null : { cert, key }
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  }
}

const writePair = async (folder: string, name: string, { cert, key }: Pair): Promise<void> => {
  const keyFile = join(folder, `${name}.key`)
  await writeFile(keyFile, key, { mode: 0o600 })
  await chmod(keyFile, 0o600)
  await writeFile(join(folder, `${name}.crt`), cert)
}

const make: Command = {
  noun: 'cert',
  verb: 'make',
  usage: '--data DIR --host NAME[,NAME...]',
  summary: 'make a certificate for https in the club’s own network, and its authority the first time',
  run: async (argv, io) => {
    const { options } = readOptions(argv, { data: 'text', host: 'text' })
    const folder = join(required('data', options.data), FOLDER)
    const hosts = required('host', options.host).split(',')
    const { newAuthority, newServerPair } = await import('@swardwright/server')
    await mkdir(folder, { recursive: true })
    const known = await readPair(folder, 'authority')
    const authority = known ?? newAuthority(hosts, Date.now())
    const server = newServerPair(authority, hosts, Date.now())
    if (!server.ok) throw new BadInput(tlsErrorWords(server.error, join(folder, 'authority.crt')))
    if (known === null) await writePair(folder, 'authority', authority)
    await writePair(folder, 'server', server.value)
    const file = (name: string): string => join(folder, name)
    io.out(`swardwright serve --tls-cert ${file('server.crt')} --tls-key ${file('server.key')}`)
    io.err(
      known === null
        ? `Put ${file('authority.crt')} on each phone once, as docs/serving.md says; keep authority.key to yourself.`
        : `Signed by the authority of ${file('authority.crt')}, which the phones have already.`,
    )
    return 0
  },
}

/** Certificates for https where a club has no domain of its own. */
export const CERT_COMMANDS: readonly Command[] = [make]
