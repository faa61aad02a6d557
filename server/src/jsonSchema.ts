import { toJsonSchema } from '@valibot/to-json-schema'
import type * as v from 'valibot'

/** A JSON Schema (2020-12), or part of one. */
export type JsonSchema = Readonly<Record<string, unknown>>

type MetadataLike = { readonly type: string; readonly metadata?: unknown }

/** The unit that the catalogue keeps beside a number, if this is such a place. */
const unitOf = (action: MetadataLike): string | null => {
  const { metadata } = action
  if (action.type !== 'metadata' || typeof metadata !== 'object' || metadata === null) return null
  const held: unknown = Object.values(metadata)[0]
  return typeof held === 'object' && held !== null && 'unit' in held && typeof held.unit === 'string'
    ? held.unit
    : null
}

/**
 * A schema of ours as JSON Schema 2020-12. Numbers of the catalogue carry their unit as `x-unit`.
 * Checks that JSON Schema can't say (a finish after a start) are left out: the document then promises less than the server checks.
 */
export const jsonSchemaOf = (schema: v.GenericSchema, side: 'input' | 'output'): JsonSchema => {
  const converted = toJsonSchema(schema, {
    target: 'draft-2020-12',
    typeMode: side,
    errorMode: 'ignore',
    ignoreActions: ['readonly'],
    overrideAction: ({ valibotAction, jsonSchema }) => {
      const unit = unitOf(valibotAction)
      return unit === null ? undefined : Object.assign(jsonSchema, { 'x-unit': unit })
    },
  })
  const { $schema: _dialect, ...rest } = converted
  return { ...rest }
}
