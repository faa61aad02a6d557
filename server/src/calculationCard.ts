import { SOURCES, type Item } from '@swardwright/engine'
import { jsonSchemaOf, type JsonSchema } from './jsonSchema.ts'

/** One calculation as lists show it: everything but the function. */
export type CalculationCard = {
  readonly name: string
  readonly title: string
  readonly words: string
  readonly formula: string
  readonly evidence: string
  readonly notes: readonly string[]
  readonly inputs: JsonSchema
  readonly outputs: JsonSchema
  readonly sources: readonly Readonly<Record<string, unknown>>[]
  readonly checks: readonly Readonly<Record<string, unknown>>[]
}

/** A calculation as `calc list --json` and `GET /api/calculations` show it; inputs and outputs are JSON Schemas. */
export const calculationCard = (item: Item): CalculationCard => ({
  name: item.name,
  title: item.title,
  words: item.words,
  formula: item.formula,
  evidence: item.evidence,
  notes: item.notes ?? [],
  inputs: jsonSchemaOf(item.inputs, 'input'),
  outputs: jsonSchemaOf(item.outputs, 'output'),
  sources: item.sources.map((id) => ({ id, ...SOURCES[id] })),
  checks: item.checks.map((check) => ({ ...check })),
})
