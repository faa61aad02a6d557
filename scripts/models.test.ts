import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { CATALOGUE } from '@swardwright/engine'
import { describe, expect, it } from 'vitest'
import { FAMILIES } from './models/families.ts'
import { modelFiles, MODELS_FOLDER } from './models/files.ts'

const files = modelFiles()

describe('the pages of the models', () => {
  it.each([...files])(
    '%s is what scripts/models.ts makes of the catalogue and the explanation today',
    (path, text) => {
      const url = new URL(path, MODELS_FOLDER)
      expect(existsSync(url) ? readFileSync(url, 'utf8') : 'missing').toBe(text)
    },
  )

  it('leave no old page or picture behind', () => {
    const kept = ['', 'pictures/'].flatMap((folder) =>
      readdirSync(new URL(folder, MODELS_FOLDER), { withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => `${folder}${entry.name}`),
    )
    expect(kept.toSorted()).toEqual([...files.keys()].toSorted())
  })

  it.each(CATALOGUE.map((item) => item.name))('tell %s once', (name) => {
    const pages = FAMILIES.filter((family) => family.items.some((beginning) => name.startsWith(beginning)))
    expect(pages).toHaveLength(1)
  })

  it('draw every number of a picture to a tenth, so that machines agree', () => {
    for (const [path, text] of files) if (path.endsWith('.svg')) expect(text).not.toMatch(/\d\.\d{4,}/u)
  })
})
