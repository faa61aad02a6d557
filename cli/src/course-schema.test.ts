import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { Ajv } from 'ajv'
import addFormats from 'ajv-formats'
import { describe, expect, test } from 'vitest'
import {
  canonicalJson,
  courseFromCsv,
  courseHash,
  randomCourse,
  readCourse,
  writeCourse,
} from '@swardwright/engine'
import { COURSE_COMMANDS } from './course.ts'

const demoText = readFileSync(new URL('../../examples/demo-course.geojson', import.meta.url), 'utf8')

/** What `course schema` prints. */
const published = async (): Promise<object> => {
  const lines: string[] = []
  const command = COURSE_COMMANDS.find(({ verb }) => verb === 'schema')
  await command?.run([], {
    out: (text) => lines.push(text),
    err: (text) => lines.push(text),
    readFile: (path) => Promise.reject(new Error(path)),
    writeFile: (path) => Promise.reject(new Error(path)),
  })
  return JSON.parse(lines.join('\n')) as object
}

const validator = async () => {
  const ajv = new Ajv({ strict: false })
  addFormats.default(ajv)
  return ajv.compile(await published())
}

type Json = { [key: string]: Json } & { [index: number]: Json }

/** The demo with one thing changed. */
const changed = (change: (file: Json) => void): unknown => {
  const file = JSON.parse(demoText) as Json
  change(file)
  return file
}

describe('the published schema of a course file', () => {
  test('takes the demo, and every file that writeCourse writes', async () => {
    const isValid = await validator()
    expect(isValid(JSON.parse(demoText))).toBe(true)
    for (const seed of [1, 2, 3]) {
      const { course } = randomCourse({ seed, greens: 7 })
      expect(isValid(JSON.parse(writeCourse(course)))).toBe(true)
    }
  })

  test('takes a file of greens alone', async () => {
    const isValid = await validator()
    expect(
      isValid(
        changed((file) => {
          delete file['swardwright']
        }),
      ),
    ).toBe(true)
  })

  test.each<[string, (file: Json) => void]>([
    [
      'an unknown machine',
      (file) => Reflect.set(file['swardwright']?.['machines']?.[0] ?? {}, 'kind', 'plough'),
    ],
    ['a slip in a field', (file) => Reflect.set(file['swardwright']?.['machines']?.[0] ?? {}, 'witdhM', 1)],
    [
      'a negative depth',
      (file) => Reflect.set(file['features']?.[0]?.['properties']?.['rootzone'] ?? {}, 'goodDepthMm', -1),
    ],
    ['another version', (file) => Reflect.set(file['swardwright'] ?? {}, 'version', 2)],
    [
      'a latitude beyond the pole',
      (file) => Reflect.set(file['features']?.[0]?.['geometry']?.['coordinates']?.[0]?.[0] ?? {}, 1, 97),
    ],
    [
      'a bare text for a date',
      (file) => Reflect.set(file['swardwright']?.['fixtures']?.[0] ?? {}, 'date', 'Saturday'),
    ],
  ])('refuses %s, as reading does', async (_, change) => {
    const file = changed(change)
    const isValid = await validator()
    expect(isValid(file)).toBe(false)
    expect(readCourse(JSON.stringify(file)).ok).toBe(false)
  })
})

test("a course's hash is the platform's SHA-256 of its canonical JSON", () => {
  const read = readCourse(demoText)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  const digest = createHash('sha256').update(canonicalJson(read.value.course), 'utf8').digest('hex')
  expect(courseHash(read.value.course)).toBe(digest)
})

describe('the examples of docs/course-file.md', () => {
  const doc = readFileSync(new URL('../../docs/course-file.md', import.meta.url), 'utf8')
  const block = (language: string): string => doc.split(`\`\`\`${language}\n`)[1]?.split('```')[0] ?? ''

  test('the course file is read, and what it states is not assumed', () => {
    const read = readCourse(block('json'))
    expect(read.ok && read.value.course.name).toBe('Ossenby Golf Club')
    expect(read.ok && read.value.assumed.some((fact) => fact.startsWith('place.shed'))).toBe(false)
  })

  test('the list of greens is read', () => {
    const read = courseFromCsv(block('text'))
    expect(read.ok && read.value.course.greens.map(({ areaM2 }) => areaM2)).toEqual([468, 512.5, 662])
  })
})
