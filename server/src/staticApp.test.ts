import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { testServer, type TestServer } from './testing/testServer.ts'

let folder: string
let server: TestServer
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'swardwright-app-'))
  await mkdir(join(folder, 'assets'))
  await writeFile(join(folder, 'index.html'), '<!doctype html><title>first page</title>')
  await writeFile(join(folder, 'assets', 'index-a1b2c3.js'), 'export {}')
  await writeFile(join(folder, 'assets', 'index-a1b2c3.js.gz'), gzipSync('export {}'))
  await writeFile(join(folder, 'icon.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>')
  server = await testServer({ appFolder: folder })
})
afterAll(async () => {
  await server.close()
  await rm(folder, { recursive: true, force: true })
})

describe('the app', () => {
  it.each(['/', '/index.html', '/green/g07', '/plan?day=2026-08-11'])(
    'opens at %s, asked for anew each time',
    async (url) => {
      const { status, headers, text } = await server.ask({ url })
      expect(status).toBe(200)
      expect(headers['content-type']).toContain('text/html')
      expect(headers['cache-control']).toBe('no-cache')
      expect(text).toContain('first page')
    },
  )

  it('is served without log-in to other machines, since it holds no data', async () => {
    expect((await server.ask({ url: '/', remoteAddress: '192.0.2.7' })).status).toBe(200)
  })

  it('keeps files with a hash in their name for good, and others not', async () => {
    const asset = await server.ask({ url: '/assets/index-a1b2c3.js' })
    expect(asset.headers['cache-control']).toBe('public, max-age=31536000, immutable')
    expect(asset.headers['content-type']).toContain('javascript')
    const icon = await server.ask({ url: '/icon.svg' })
    expect(icon.headers['cache-control']).toBe('no-cache')
    expect(icon.headers['content-type']).toContain('image/svg+xml')
  })

  it('goes packed to a browser that can unpack it, and as it is to one that can not', async () => {
    const url = '/assets/index-a1b2c3.js'
    const packed = await server.ask({ url, headers: { 'accept-encoding': 'gzip, deflate' } })
    expect(packed.headers['content-encoding']).toBe('gzip')
    expect(packed.headers['content-type']).toContain('javascript')
    expect(packed.headers['cache-control']).toContain('immutable')
    // A proxy in between must not hand the packed one to a browser that can't unpack it.
    expect(String(packed.headers['vary'])).toMatch(/accept-encoding/iu)
    const plain = await server.ask({ url })
    expect(plain.headers['content-encoding']).toBeUndefined()
    expect(String(plain.headers['vary'])).toMatch(/accept-encoding/iu)
    expect(plain.text).toBe('export {}')
  })

  it.each(['/assets/gone-ffffff.js', '/nothing.png', '/..%2f..%2fpackage.json', '/api/screen'])(
    'is not sent in place of %s, which is not there',
    async (url) => {
      const { status, text } = await server.ask({ url })
      expect([400, 403, 404]).toContain(status)
      expect(text).not.toContain('first page')
      expect(text).not.toContain('workspaces')
    },
  )

  it('says what to do when it is not built', async () => {
    const bare = await testServer({ appFolder: join(folder, 'nowhere') })
    expect(await bare.ask({ url: '/' })).toMatchObject({
      status: 503,
      text: 'The app is not built yet. Run: npm run build\n',
    })
    expect((await bare.ask({ url: '/health' })).status).toBe(200)
    await bare.close()
  })
})
