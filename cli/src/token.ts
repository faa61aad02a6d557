import { ROLES, type Role } from '@swardwright/journal'
import type { Storage } from '@swardwright/server'
import { cantKeepData } from './cant-keep.ts'
import { BadInput, type Command } from './command.ts'
import { databaseAddress, readOptions, required } from './options.ts'

const PLACE = { data: 'text', database: 'text' } as const

type Place = { readonly data?: string; readonly database?: string }

/** Where tokens are kept: the file in `--data`, or with `--database` the club's PostgreSQL database. */
const withStorage = async <T>(place: Place, work: (storage: Storage) => Promise<T>): Promise<T> => {
  const { openStorage } = await import('@swardwright/server')
  const database = databaseAddress(place.database)
  const dataDir = database === null ? required('data', place.data) : ''
  const storage = await openStorage({ dataDir, database, log: () => undefined }).catch((error: unknown) => {
    throw cantKeepData(database === null ? dataDir : 'that database', error)
  })
  try {
    return await work(storage)
  } finally {
    await storage.close()
  }
}

const roleOf = (text: string): Role => {
  const role = ROLES.find((known) => known === text)
  if (role === undefined) throw new BadInput(`--role is '${text}'; it must be ${ROLES.join(', ')}`)
  return role
}

/** The name under which the journals tell of a token; no longer than they take, so that none is made that they can't tell of. */
const nameOf = (text: string): string => {
  const name = text.trim()
  if (/^[^\p{Cc}]{1,120}$/u.test(name)) return name
  throw new BadInput('--name must be one line of 1 to 120 characters')
}

const create: Command = {
  noun: 'token',
  verb: 'create',
  usage: '--data DIR|--database postgres://... --role manager|deputy|crew|committee [--name N]',
  summary: 'print a new access token for a script or device; it is shown only this once',
  run: async (argv, io) => {
    const { options } = readOptions(argv, { ...PLACE, role: 'text', name: 'text' })
    const role = roleOf(required('role', options.role))
    const name = nameOf(options.name ?? role)
    const { giveToken } = await import('@swardwright/server')
    io.out(await withStorage(options, (storage) => giveToken(storage, { role, name, nowMs: Date.now() })))
    return 0
  },
}

const list: Command = {
  noun: 'token',
  verb: 'list',
  usage: '--data DIR|--database postgres://... [--json]',
  summary: 'list access tokens: id, role, name, since when, until when',
  run: async (argv, io) => {
    const { options } = readOptions(argv, { ...PLACE, json: 'flag' })
    const rows = await withStorage(options, ({ tokens }) => tokens.list())
    const shown = rows.map(({ hash: _hash, ...row }) => row)
    if (options.json === true) io.out(JSON.stringify(shown))
    else
      for (const { id, role, name, createdAt, revokedAt } of shown)
        io.out(
          `${id}  ${role}  ${name}  since ${createdAt}${revokedAt === null ? '' : `  revoked ${revokedAt}`}`,
        )
    return 0
  },
}

const revoke: Command = {
  noun: 'token',
  verb: 'revoke',
  usage: 'ID --data DIR|--database postgres://...',
  summary: 'end an access token at once',
  run: async (argv, io) => {
    const { options, words } = readOptions(argv, PLACE, { least: 1, most: 1, names: 'the id of one token' })
    const [id = ''] = words
    const { endToken } = await import('@swardwright/server')
    const isDone = await withStorage(options, (storage) => endToken(storage, id, Date.now()))
    if (!isDone) throw new BadInput(`there is no token ${id} that is still good`)
    io.out(`token ${id} is revoked`)
    return 0
  },
}

/** Access tokens for scripts and devices. They are kept as hashes in the database of the data folder. */
export const TOKEN_COMMANDS: readonly Command[] = [create, list, revoke]
