import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chmod, chown, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir, userInfo } from 'node:os'
import { delimiter, join } from 'node:path'
import { once } from 'node:events'
import { setTimeout as pause } from 'node:timers/promises'
import pg from 'pg'

/** A PostgreSQL server of its own for tests, on a socket in a temporary folder: nothing else on the machine sees it. */
export type PostgresCluster = {
  /** Address of a new, empty place for tables: a schema of its own, which is much quicker made than a database. */
  readonly newDatabase: () => Promise<string>
  readonly stop: () => Promise<void>
}

const BINARIES = ['initdb', 'postgres'] as const

/** Folder that has all the programs needed, searched where the shell searches and where Debian puts them; null where there is none. */
const binaryFolder = (): string | null => {
  const usual = Array.from({ length: 10 }, (_, index) => `/usr/lib/postgresql/${20 - index}/bin`)
  const folders = [...(process.env['PATH'] ?? '').split(delimiter), ...usual]
  return folders.find((folder) => BINARIES.every((name) => existsSync(join(folder, name)))) ?? null
}

/** True where this machine has PostgreSQL. */
export const hasPostgres = (): boolean => binaryFolder() !== null

/** PostgreSQL refuses to run as root, so there it runs as `nobody` (user 65534 on Debian and most others). */
const NOBODY = 65_534
const owner = (): { readonly uid?: number; readonly gid?: number } =>
  userInfo().uid === 0 ? { uid: NOBODY, gid: NOBODY } : {}

const ran = (program: string, argv: readonly string[]): void => {
  const { status, stderr } = spawnSync(program, argv, { ...owner(), encoding: 'utf8', cwd: tmpdir() })
  if (status !== 0) throw new Error(`${program} failed: ${stderr}`)
}

/** A connection, once the server takes one. */
const connected = async (address: string, server: ChildProcess): Promise<pg.Client> => {
  for (let tries = 1; ; tries += 1) {
    const client = new pg.Client({ connectionString: address })
    try {
      await client.connect()
      return client
    } catch (error) {
      // It is still starting up.
      if (tries > 300 || server.exitCode !== null) {
        server.kill('SIGINT')
        throw error
      }
      await pause(100)
    }
  }
}

/** Starts a cluster; call only where `hasPostgres`. */
export const postgresCluster = async (): Promise<PostgresCluster> => {
  const folder = binaryFolder()
  if (folder === null) throw new Error('this machine has no PostgreSQL')
  const root = await mkdtemp(join(tmpdir(), 'swardwright-pg-'))
  await chmod(root, 0o755)
  const { uid, gid } = owner()
  if (uid !== undefined && gid !== undefined) await chown(root, uid, gid)
  const data = join(root, 'data')
  ran(join(folder, 'initdb'), ['-D', data, '-U', 'club', '--auth=trust', '--no-sync', '-E', 'UTF8'])
  const server = spawn(join(folder, 'postgres'), ['-D', data, '-k', root, '-c', 'listen_addresses='], {
    ...owner(),
    cwd: root,
    stdio: 'ignore',
  })
  const address = `postgres://club@/postgres?host=${encodeURIComponent(root)}`
  const client = await connected(address, server)
  let made = 0
  return {
    newDatabase: async () => {
      const schema = `club${(made += 1)}`
      await client.query(`CREATE SCHEMA ${schema}`)
      return `${address}&options=${encodeURIComponent(`-c search_path=${schema}`)}`
    },
    stop: async () => {
      await client.end()
      const gone = once(server, 'exit')
      server.kill('SIGINT')
      await gone
      await rm(root, { recursive: true, force: true })
    },
  }
}
