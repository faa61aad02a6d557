import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'

const root = join(import.meta.dirname, '..')
const oxlint = join(root, 'node_modules/.bin/oxlint')
const folder = mkdtempSync(join(tmpdir(), 'swardwright-boundaries-'))

afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
})

/** Lints a small tree of planted files with the project's own rules; returns the codes found in each file. */
const lint = (files: Readonly<Record<string, string>>): ReadonlyMap<string, readonly string[]> => {
  const tree = mkdtempSync(join(folder, 'tree-'))
  cpSync(join(root, '.oxlintrc.json'), join(tree, '.oxlintrc.json'))
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(tree, path)), { recursive: true })
    writeFileSync(join(tree, path), text)
  }
  const { stdout } = spawnSync(oxlint, ['--format=json'], { cwd: tree, encoding: 'utf8' })
  const report = JSON.parse(stdout) as {
    diagnostics: { filename: string; code: string }[]
    number_of_files: number
  }
  expect(report.number_of_files).toBe(Object.keys(files).length)
  const found = new Map<string, string[]>()
  for (const { filename, code } of report.diagnostics)
    found.set(filename, [...(found.get(filename) ?? []), code])
  return found
}

describe('the rules about directions and cycles', () => {
  it.each([
    ['engine', '@swardwright/journal'],
    ['engine', '../../present/src/units.ts'],
    ['journal', '@swardwright/present'],
    ['present', '@swardwright/server'],
    ['web', '@swardwright/server'],
    ['web', 'node:fs'],
  ])('refuse an import in %s of %s', (room, target) => {
    const path = `${room}/src/planted.ts`
    expect(lint({ [path]: `import { x } from '${target}'\nexport const y = x\n` }).get(path)).toContain(
      'eslint(no-restricted-imports)',
    )
  })

  it('allow the arrows that the design draws', () => {
    expect(
      lint({ 'web/src/planted.ts': "import { x } from '@swardwright/present'\nexport const y = x\n" }).size,
    ).toBe(0)
  })

  it('find a cycle of imports', () => {
    const found = lint({
      'engine/src/a.ts': "import { b } from './b.ts'\nexport const a = (): number => b()\n",
      'engine/src/b.ts': "import { a } from './a.ts'\nexport const b = (): number => a()\n",
    })
    expect([...found.values()].flat()).toContain('import(no-cycle)')
  })

  it.each([
    ['Math.random()', 'eslint(no-restricted-properties)'],
    ['Date.now()', 'eslint(no-restricted-properties)'],
    ["document.createElement('p')", 'eslint(no-restricted-globals)'],
  ])('refuse %s in the engine', (code, rule) => {
    expect(
      lint({ 'engine/src/planted.ts': `export const x = (): unknown => ${code}\n` }).get(
        'engine/src/planted.ts',
      ),
    ).toContain(rule)
  })

  it('see every source file of the project', () => {
    const { stdout } = spawnSync(oxlint, ['--format=json'], { cwd: root, encoding: 'utf8', maxBuffer: 1e8 })
    const seen = (JSON.parse(stdout) as { number_of_files: number }).number_of_files
    const tracked = execFileSync('git', ['ls-files', '*.ts', '*.tsx', '*.mjs'], {
      cwd: root,
      encoding: 'utf8',
    })
      .split('\n')
      .filter((path) => path !== '')
    expect(seen).toBeGreaterThanOrEqual(tracked.length)
  })
})
