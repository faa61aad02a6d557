import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'

const app = join(import.meta.dirname, '../web/dist/app')
const isBuilt = existsSync(join(app, 'index.html'))

/** What a first visit loads may not grow past this, in kB of 1,000 bytes; the goal is 300. */
const MOST_KB = 440

const sizeKb = (path: string): number => {
  const bytes = readFileSync(join(app, path))
  // A font is packed already and goes as it is.
  return (path.endsWith('.woff2') ? bytes.length : gzipSync(bytes, { level: 9 }).length) / 1000
}

/** What index.html names, and the engine's worker and the font that those load at once. */
const firstLoad = (): readonly string[] => {
  const page = readFileSync(join(app, 'index.html'), 'utf8')
  const named = [...page.matchAll(/(?:src|href)="\/(assets\/[^"]+)"/gu)].flatMap(([, path]) => path ?? [])
  const loaded = readdirSync(join(app, 'assets')).filter((name) => /^worker-.*\.js$|\.woff2$/u.test(name))
  return ['index.html', ...named, ...loaded.map((name) => `assets/${name}`)]
}

/** The build is made before the tests; without one there is nothing to weigh. */
describe.skipIf(!isBuilt)('the first visit', () => {
  it('loads a page, a script, a style, the engine and a font', () => {
    const kinds = firstLoad().map((path) => path.replace(/-[\w-]{8}\./u, '.'))
    expect(kinds).toEqual(
      expect.arrayContaining(['index.html', 'assets/index.js', 'assets/index.css', 'assets/worker.js']),
    )
    expect(kinds.some((path) => path.endsWith('.woff2'))).toBe(true)
  })

  it(`weighs less than ${MOST_KB} kB, the map for outlines left out`, () => {
    const parts = firstLoad().map((path) => [path, sizeKb(path)] as const)
    const total = parts.reduce((sum, [, kb]) => sum + kb, 0)
    console.log(
      [...parts, ['together', total] as const].map(([path, kb]) => `${kb.toFixed(0)} kB ${path}`).join('\n'),
    )
    expect(total).toBeLessThan(MOST_KB)
  })

  it('leaves the map out', () => {
    expect(firstLoad().filter((path) => /drawing-map|maplibre/u.test(path))).toEqual([])
  })
})
