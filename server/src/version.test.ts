import { readFile } from 'node:fs/promises'
import { expect, it } from 'vitest'
import { SERVER_VERSION } from './version.ts'

it('the version told is the version of the package', async () => {
  const text = await readFile(new URL('../package.json', import.meta.url), 'utf8')
  expect(JSON.parse(text)).toMatchObject({ version: SERVER_VERSION })
})
