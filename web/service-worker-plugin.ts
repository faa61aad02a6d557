import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'
import { FILE_LIST } from './src/offline/file-list.ts'
import type { Shell } from './src/offline/shell.ts'

/** Where the service worker lies: at the root, since it can only serve what lies beneath it. */
export const SERVICE_WORKER_FILE = 'sw.js'

/** The map for drawing outlines, its worker and its style: larger than all the rest, and seldom used. */
const IS_KEPT_ON_USE = /^assets\/(?:drawing-map|maplibre)/u

const publicFiles = (folder: string, under = ''): readonly string[] =>
  readdirSync(join(folder, under), { withFileTypes: true }).flatMap((file) => {
    const path = under === '' ? file.name : `${under}/${file.name}`
    return file.isDirectory() ? publicFiles(folder, path) : [path]
  })

/** Lists the files of a build and hashes them together. */
const shellOf = (files: ReadonlyMap<string, string | Uint8Array>): Shell => {
  const names = [...files.keys()].toSorted()
  const hash = createHash('sha256')
  for (const name of names)
    hash
      .update(name)
      .update('\0')
      .update(files.get(name) ?? '')
      .update('\0')
  const address = (name: string): string => `/${name}`
  return {
    version: hash.digest('hex').slice(0, 16),
    kept: names.filter((name) => !IS_KEPT_ON_USE.test(name)).map(address),
    onUse: names.filter((name) => IS_KEPT_ON_USE.test(name)).map(address),
  }
}

/** Tells the service worker which files the build consists of. Its source is an entry of the build named `sw`. */
export const serviceWorkerShell = (publicFolder: string): Plugin => ({
  name: 'swardwright-service-worker',
  apply: 'build',
  generateBundle: {
    order: 'post',
    handler(_options, bundle) {
      const worker = bundle[SERVICE_WORKER_FILE]
      if (worker?.type !== 'chunk') return this.error(`the build made no ${SERVICE_WORKER_FILE}`)
      // Browsers refuse one that imports, and then nothing is kept: what it shares with the app must not hold code that the app runs.
      if (worker.imports.length > 0)
        return this.error(`${SERVICE_WORKER_FILE} shares code with the app: ${worker.imports.join(', ')}`)
      const files = new Map<string, string | Uint8Array>(
        publicFiles(publicFolder).map((name) => [name, readFileSync(join(publicFolder, name))]),
      )
      // Its code counts too: a change in it alone is a new version.
      files.set(SERVICE_WORKER_FILE, worker.code)
      for (const file of Object.values(bundle))
        files.set(file.fileName, file.type === 'chunk' ? file.code : file.source)
      const shell = shellOf(files)
      const kept = shell.kept.filter((path) => path !== `/${SERVICE_WORKER_FILE}`)
      worker.code = worker.code.replace('__SHELL__', () => JSON.stringify({ ...shell, kept }))
      // For pages that can have no service worker, to fetch the same files ahead.
      this.emitFile({ type: 'asset', fileName: FILE_LIST, source: JSON.stringify(kept) })
      return undefined
    },
  },
})
