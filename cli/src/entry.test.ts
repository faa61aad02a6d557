import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import { fullFormats } from 'ajv-formats/dist/formats.js'
import { beforeAll, describe, expect, it } from 'vitest'
import { KIND_NAMES, judgeEntry } from '@swardwright/journal'
import { dispatch } from './dispatch.ts'
import { ENTRY_COMMANDS } from './entry.ts'

const run = async (...argv: readonly string[]) => {
  const out: string[] = []
  const err: string[] = []
  const unused = () => Promise.reject(new Error('no files'))
  const code = await dispatch(ENTRY_COMMANDS, ['entry', ...argv], {
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    readFile: unused,
    writeFile: unused,
  })
  return { code, out: out.join('\n'), err }
}

let takes: ValidateFunction
beforeAll(async () => {
  const schema = JSON.parse((await run('schema')).out)
  // Strict, as it is by itself: an unknown keyword is an error. A format is one that `ajv-formats` knows.
  takes = new Ajv2020({ formats: fullFormats, strictTuples: false }).compile(schema)
})

describe('entries from the terminal', () => {
  it.each(KIND_NAMES)(
    'an example of %s is one that a server takes, and that the printed schema takes',
    async (name) => {
      const example = JSON.parse((await run('example', name, '--course', 'links')).out)
      expect(judgeEntry(example, { course: 'links', role: 'manager', nowMs: Date.now() })).toEqual({
        ok: true,
        value: example,
      })
      expect(takes(example), JSON.stringify(takes.errors)).toBe(true)
      expect(takes({ ...example, kind: 'droneFlown' })).toBe(false)
      expect(takes({ ...example, body: { surprise: 1 } })).toBe(false)
    },
  )

  it('there is no example of an unknown kind', async () => {
    const { code, err } = await run('example', 'toString')
    expect(code).toBe(2)
    expect(err[0]).toContain('there is no kind toString; it is one of courseChanged, ')
  })
})
