import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { startServer } from '@swardwright/server'
import { dispatch } from './dispatch.ts'
import { TOKEN_COMMANDS } from './token.ts'

let dataDir: string
beforeEach(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'swardwright-token-'))
})
afterEach(() => rm(dataDir, { recursive: true, force: true }))

const run = async (...argv: readonly string[]) => {
  const out: string[] = []
  const err: string[] = []
  const unused = () => Promise.reject(new Error('tokens are kept in the database'))
  const code = await dispatch(TOKEN_COMMANDS, ['token', ...argv, '--data', dataDir], {
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    readFile: unused,
    writeFile: unused,
  })
  return { code, out, err }
}

describe('access tokens from the terminal', () => {
  it('are good at a running server at once, until they are revoked', async () => {
    const server = await startServer({ dataDir, port: 0, host: '127.0.0.1', log: () => undefined })
    const { code, out } = await run('create', '--role', 'committee', '--name', 'Office')
    expect(code).toBe(0)
    expect(out).toHaveLength(1)
    const ask = async () =>
      (await fetch(`${server.address}api/courses`, { headers: { authorization: `Bearer ${out[0] ?? ''}` } }))
        .status
    expect(await ask()).toBe(200)
    const [row] = JSON.parse((await run('list', '--json')).out[0] ?? '[]')
    expect(row).toMatchObject({ role: 'committee', name: 'Office', revokedAt: null })
    expect(row).not.toHaveProperty('hash')
    expect((await run('revoke', row.id)).code).toBe(0)
    expect(await ask()).toBe(401)
    expect((await run('list')).out[0]).toContain('revoked')
    await server.close()
  })

  it.each(['', '  ', 'two\nlines', 'x'.repeat(121)])(
    'are not made under the name %j, which no journal could tell',
    async (name) => {
      const { code, err } = await run('create', '--role', 'crew', '--name', name)
      expect([code, err]).toEqual([2, ['--name must be one line of 1 to 120 characters']])
      expect((await run('list')).out).toEqual([])
    },
  )

  it('say in one sentence that a folder can’t be used', async () => {
    await writeFile(
      join(dataDir, 'swardwright.sqlite'),
      'a shopping list, long enough to be no header of a database',
    )
    const { code, err } = await run('list')
    expect(code).toBe(2)
    expect(err).toEqual([`can't keep data in ${dataDir}: file is not a database`])
  })

  it('[J31] stand in the journal of every course: when they were made, and when revoked', async () => {
    const server = await startServer({ dataDir, port: 0, host: '127.0.0.1', log: () => undefined })
    const [demo] = await (await fetch(`${server.address}api/courses`)).json()
    const made = await fetch(`${server.address}api/courses`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ name: 'Second course' }),
    })
    const second = await made.json()
    await run('create', '--role', 'crew', '--name', 'Shed tablet')
    const [row] = JSON.parse((await run('list', '--json')).out[0] ?? '[]')
    await run('revoke', row.id)
    await run('revoke', row.id)
    for (const course of [demo.id, second.id]) {
      const answer = await fetch(`${server.address}api/courses/${course}/entries?limit=1000`)
      const { entries } = await answer.json()
      const told = entries.filter((entry: { kind: string }) => entry.kind === 'accessChanged')
      expect(told.map((entry: { author: string; body: unknown }) => [entry.author, entry.body])).toEqual([
        [
          'Terminal of the server',
          { change: 'tokenMade', access: row.id, name: 'Shed tablet', role: 'crew' },
        ],
        [
          'Terminal of the server',
          { change: 'accessEnded', access: row.id, name: 'Shed tablet', role: 'crew' },
        ],
      ])
    }
    await server.close()
  })

  it('are made only for a role that there is', async () => {
    expect(await run('create', '--role', 'owner')).toEqual({
      code: 2,
      out: [],
      err: ["--role is 'owner'; it must be manager, deputy, crew, committee"],
    })
    expect((await run('create')).err).toEqual(['--role is missing'])
  })

  it('that are not there are not revoked', async () => {
    expect(await run('revoke', 'abc')).toMatchObject({
      code: 2,
      err: ['there is no token abc that is still good'],
    })
  })
})
