import { randomBytes } from 'node:crypto'
import {
  KINDS,
  KIND_NAMES,
  UUID_RANDOM_BYTES,
  entrySchema,
  findKind,
  momentFromMs,
  uuidV7,
  type Entry,
} from '@swardwright/journal'
import type { JsonSchema, jsonSchemaOf } from '@swardwright/server'
import { BadInput, type Command } from './command.ts'
import { readOptions } from './options.ts'

/** Turns a schema into JSON Schema; the server's, handed in, so that it is loaded only by the command that needs it. */
type SchemaOf = typeof jsonSchemaOf

/** One kind as JSON Schema: the envelope with this kind, its version of today and its body. */
const kindSchema = (name: string, schemaOf: SchemaOf): JsonSchema => {
  const kind = findKind(KINDS, name)
  if (kind === undefined)
    throw new BadInput(`there is no kind ${name}; it is one of ${KIND_NAMES.join(', ')}`)
  return {
    title: name,
    description: `${kind.meaning} May be recorded by ${kind.roles.join(', ')}.`,
    properties: {
      kind: { const: name },
      version: { const: kind.version },
      body: schemaOf(kind.body, 'input'),
    },
  }
}

/** The whole schema: an entry has the envelope, and the body of one of the kinds. */
const journalSchema = (schemaOf: SchemaOf): JsonSchema => ({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'An entry of a Swardwright journal',
  ...schemaOf(entrySchema, 'input'),
  oneOf: KIND_NAMES.map((name) => kindSchema(name, schemaOf)),
})

/**
 * A part of a schema in the words of the standard alone, as a strict validator wants it: what is told of a quantity beyond them goes into
 * its description.
 */
const standardWords = (_key: string, part: unknown): unknown => {
  if (typeof part !== 'object' || part === null || !('x-unit' in part)) return part
  const { 'x-unit': unit, quantity: _quantity, ...rest }: Record<string, unknown> = { ...part }
  return unit === '1' ? rest : { ...rest, description: `${String(rest['description'])}, ${String(unit)}` }
}

const schema: Command = {
  noun: 'entry',
  verb: 'schema',
  usage: '',
  summary: 'print the JSON Schema of entries: the envelope and every kind',
  run: async (argv, io) => {
    readOptions(argv, {})
    const server = await import('@swardwright/server')
    io.out(JSON.stringify(journalSchema(server.jsonSchemaOf), standardWords, 2))
    return 0
  },
}

/** A valid entry of a kind, made now. */
const exampleOf = (name: string, course: string, nowMs: number): Entry => {
  const kind = findKind(KINDS, name)
  if (kind === undefined)
    throw new BadInput(`there is no kind ${name}; it is one of ${KIND_NAMES.join(', ')}`)
  const at = momentFromMs(nowMs)
  return {
    id: uuidV7({ nowMs, random: randomBytes(UUID_RANDOM_BYTES) }),
    course,
    device: 'terminal',
    author: 'somebody',
    at,
    recordedAt: at,
    kind: name,
    version: kind.version,
    body: { ...(kind.example as object) },
  }
}

const example: Command = {
  noun: 'entry',
  verb: 'example',
  usage: 'KIND [--course ID]',
  summary: 'print one valid entry of a kind, made now',
  run: async (argv, io) => {
    const { options, words } = readOptions(
      argv,
      { course: 'text' },
      { least: 1, most: 1, names: 'one kind of entry' },
    )
    io.out(JSON.stringify(exampleOf(words[0] ?? '', options.course ?? 'ossenby', Date.now())))
    return 0
  },
}

/** What a script needs to write entries without reading code. */
export const ENTRY_COMMANDS: readonly Command[] = [schema, example]
