import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'

const app = join(import.meta.dirname, '../web/dist/app')
const isBuilt = existsSync(join(app, 'index.html'))

/** What a first visit loads may not grow past this, in kB of 1,000 bytes. */
const MOST_KB = 300

const read = (path: string): string => readFileSync(join(app, path), 'utf8')

const sizeKb = (path: string): number => {
  const bytes = readFileSync(join(app, path))
  // Fonts and pictures are packed already and go as they are.
  return (/\.(?:woff2|png)$/u.test(path) ? bytes.length : gzipSync(bytes, { level: 9 }).length) / 1000
}

const built = (name: RegExp): readonly string[] =>
  readdirSync(join(app, 'assets'))
    .filter((file) => name.test(file))
    .map((file) => `assets/${file}`)

/** What a file imports at once; what it imports when asked is left out. */
const importsOf = (path: string): readonly string[] =>
  [...read(path).matchAll(/(?:from|^import|;import)\s*["'`]\.\/([^"'`]+)["'`]/gu)].map(
    ([, name]) => `assets/${name}`,
  )

/** A file and all that it imports, at any remove. */
const withImports = (path: string, seen: readonly string[] = []): readonly string[] =>
  seen.includes(path)
    ? seen
    : importsOf(path).reduce<readonly string[]>((all, next) => withImports(next, all), [...seen, path])

/** What the page names, the font, the worker, and the jobs that the opening page has it do: figures and a plan. */
const firstLoad = (): readonly string[] => {
  const named = [...read('index.html').matchAll(/(?:src|href)="\/([^"]+)"/gu)].flatMap(
    ([, path]) => path ?? [],
  )
  const scripts = [
    ...named.filter((path) => path.endsWith('.js')),
    ...built(/^(?:worker|figures|planning)-.*\.js$/u),
  ]
  const all = scripts.flatMap((path) => [...withImports(path)])
  return [...new Set(['index.html', ...named, ...all, ...built(/\.woff2$/u)])]
}

/** The build is made before the tests; without one there is nothing to weigh. */
describe.skipIf(!isBuilt)('the first visit', () => {
  it('loads a page, a script, a style, the engine and a font', () => {
    const kinds = firstLoad().map((path) => path.replace(/-[\w-]{8}\./u, '.'))
    expect(kinds).toEqual(
      expect.arrayContaining([
        'index.html',
        'app.webmanifest',
        'assets/index.js',
        'assets/index.css',
        'assets/worker.js',
        'assets/figures.js',
        'assets/planning.js',
      ]),
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
