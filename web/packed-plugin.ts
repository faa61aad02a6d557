import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Plugin } from 'vite'

const IS_TEXT = /\.(?:html|m?js|css|svg|json|webmanifest)$/u

/** Writes a packed copy beside each text of the build, so that the server need not pack them anew for every visitor. */
export const packedCopies = (folder: string): Plugin => ({
  name: 'swardwright-packed-copies',
  apply: 'build',
  closeBundle() {
    for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }))
      if (IS_TEXT.test(name))
        writeFileSync(join(folder, `${name}.gz`), gzipSync(readFileSync(join(folder, name)), { level: 9 }))
  },
})
