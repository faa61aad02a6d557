import { readFileSync } from 'node:fs'
import { FAMILIES } from './families.ts'
import { indexOf, pageOf } from './page.ts'

/** Folder of the pages. */
export const MODELS_FOLDER = new URL('../../docs/models/', import.meta.url)

const words = (file: string): string => readFileSync(new URL(`words/${file}.md`, MODELS_FOLDER), 'utf8')

/** Every generated file by its path in `docs/models`. */
export const modelFiles = (): ReadonlyMap<string, string> =>
  new Map([
    ['README.md', indexOf(FAMILIES, words('README'))],
    ...FAMILIES.flatMap((family): readonly (readonly [string, string])[] => [
      [`${family.file}.md`, pageOf(family, words(family.file))],
      [`pictures/${family.file}.svg`, family.picture()],
    ]),
  ])
