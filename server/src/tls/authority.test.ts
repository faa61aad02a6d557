import { spawnSync } from 'node:child_process'
import { X509Certificate } from 'node:crypto'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { request } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { testServer } from '../testing/testServer.ts'
import { checkPair, newAuthority, newServerPair, type Pair } from './authority.ts'

/** The reference; where it is not installed its tests are skipped. */
const REFERENCE = 'openssl'

const NOW_MS = Date.now()
const DAY_MS = 24 * 60 * 60 * 1000

const pairFor = (authority: Pair, ...hosts: readonly string[]): Pair => {
  const made = newServerPair(authority, hosts, NOW_MS)
  if (!made.ok) throw new Error(made.error.type)
  return made.value
}

/** What OpenSSL, the reference, says of a certificate behind an authority. */
const verified = async (authority: Pair, pair: Pair, ...more: readonly string[]): Promise<string> => {
  const folder = await mkdtemp(join(tmpdir(), 'swardwright-tls-'))
  await writeFile(join(folder, 'a.crt'), authority.cert)
  await writeFile(join(folder, 's.crt'), pair.cert)
  const argv = ['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', 'a.crt', ...more, 's.crt']
  const { stdout, stderr } = spawnSync(REFERENCE, argv, { cwd: folder, encoding: 'utf8' })
  await rm(folder, { recursive: true, force: true })
  return stdout + stderr
}
const hasOpenssl = spawnSync(REFERENCE, ['version']).status === 0

describe('a local authority', () => {
  const authority = newAuthority(['shed'], NOW_MS)
  const pair = pairFor(authority, 'greens.local', 'shed', '192.168.1.20')

  it('signs certificates for names and addresses that Node takes', () => {
    const [root, leaf] = [new X509Certificate(authority.cert), new X509Certificate(pair.cert)]
    expect(root.ca).toBe(true)
    expect(leaf.ca).toBe(false)
    expect(leaf.verify(root.publicKey)).toBe(true)
    expect(leaf.checkIssued(root)).toBe(true)
    expect(leaf.checkHost('greens.local')).toBe('greens.local')
    expect(leaf.checkHost('other.local')).toBeUndefined()
    expect(leaf.checkIP('192.168.1.20')).toBe('192.168.1.20')
    // Apple, 'Requirements for trusted certificates in iOS 13 and macOS 10.15': 825 days at most.
    expect((Date.parse(leaf.validTo) - Date.parse(leaf.validFrom)) / DAY_MS).toBeLessThanOrEqual(825)
  })

  it.skipIf(!hasOpenssl)(
    'signs certificates that OpenSSL takes to the letter, and only for the club’s own names',
    async () => {
      expect(await verified(authority, pair, '-verify_hostname', 'shed')).toContain('OK')
      expect(await verified(authority, pair, '-verify_ip', '192.168.1.20')).toContain('OK')
      expect(await verified(authority, pair, '-verify_hostname', 'park.local')).toContain('ostname mismatch')
      expect(await verified(authority, pairFor(authority, 'bank.example'))).toContain(
        'permitted subtree violation',
      )
      expect(await verified(authority, pairFor(authority, '203.0.113.9'))).toContain(
        'permitted subtree violation',
      )
      const other = newAuthority(['bank.example'], NOW_MS)
      expect(await verified(other, pairFor(other, 'bank.example'))).toContain('OK')
      expect(await verified(other, pair)).not.toMatch(/s\.crt: OK/u)
    },
  )

  it('lets the server be reached over https, with a cookie for https alone', async () => {
    const server = await testServer({
      tls: pair,
      singleUser: false,
      setUpCode: 'K7MP-2WQX',
      passwordCost: { log2N: 4, r: 8, p: 1 },
    })
    const address = new URL(await server.app.listen({ port: 0, host: '127.0.0.1' }))
    expect(address.protocol).toBe('https:')
    const body = JSON.stringify({ code: 'K7MP-2WQX', name: 'Ada', password: 'wet hollow front left' })
    const cookie = await new Promise<string>((resolve, reject) => {
      const asked = request(
        {
          host: '127.0.0.1',
          port: address.port,
          servername: 'greens.local',
          path: '/api/set-up',
          method: 'POST',
          ca: authority.cert,
          headers: {
            host: 'greens.local',
            origin: 'https://greens.local',
            'content-type': 'application/json',
          },
        },
        (answer) => {
          answer.resume()
          resolve(String(answer.headers['set-cookie']))
        },
      )
      asked.on('error', reject)
      asked.end(body)
    })
    expect(cookie).toContain('; Secure')
    await server.close()
  })

  it.each(['Greens.local', 'greens_shed', '-shed', '300.1.1.1', 'http://shed', '', '::1'])(
    'signs nothing for %j',
    (host) => {
      expect(newServerPair(authority, [host], NOW_MS)).toEqual({
        ok: false,
        error: { type: 'badHost', host },
      })
    },
  )

  it('tells a key of another certificate, what is no certificate or key, and what has run out', () => {
    const other = newAuthority([], NOW_MS)
    expect(checkPair({ ...pair, key: other.key }, NOW_MS)).toMatchObject({ error: { type: 'notItsKey' } })
    expect(checkPair({ ...pair, cert: 'x' }, NOW_MS)).toMatchObject({ error: { type: 'badCertificate' } })
    expect(checkPair({ ...pair, key: 'x' }, NOW_MS)).toMatchObject({ error: { type: 'badKey' } })
    expect(checkPair(pair, NOW_MS + 821 * DAY_MS)).toMatchObject({ error: { type: 'expired' } })
    expect(checkPair(pair, NOW_MS).ok).toBe(true)
  })
})
