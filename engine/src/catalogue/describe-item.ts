import type { Check, Evidence, Item } from './item.ts'
import { elementOf, fieldsOf, figureOf, optionsOf, quantityOf, unwrap } from './schema-walk.ts'
import { SOURCES, type SourceId } from './sources.ts'

/** One field of an input or output as plain data. Fields of lists are written `layers[].toMm`. */
export type FieldDescription = {
  readonly field: string
  readonly meaning: string
  /** Unit as written on screens; '1' for shares and counts, '' for words, yes and no. */
  readonly unit: string
  /** Accepted range of a number in an input, else null. */
  readonly min: number | null
  readonly max: number | null
  readonly symbol: string | null
  readonly optional: boolean
  /** Used when an optional field is left out; null when nothing is. */
  readonly default: number | string | boolean | null
  /** The words accepted, for a choice. */
  readonly choices: readonly string[] | null
}

/** A source written out in one line. */
export type SourceDescription = { readonly id: SourceId; readonly text: string; readonly url: string | null }

/** Everything about an item as plain JSON, without its function and schemas. */
export type ItemDescription = {
  readonly name: string
  readonly title: string
  readonly words: string
  readonly formula: string
  readonly evidence: Evidence
  readonly inputs: readonly FieldDescription[]
  readonly outputs: readonly FieldDescription[]
  readonly sources: readonly SourceDescription[]
  readonly notes: readonly string[]
  readonly checks: readonly Check[]
}

const own = (schema: unknown, key: string): unknown =>
  typeof schema === 'object' && schema !== null && key in schema
    ? (schema as Readonly<Record<string, unknown>>)[key]
    : undefined

const defaultOf = (schema: unknown): number | string | boolean | null => {
  const value = own(schema, 'default')
  return typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean' ? value : null
}

const pipeDescription = (schema: unknown): string => {
  const pipe = own(schema, 'pipe')
  const found: unknown = Array.isArray(pipe)
    ? pipe.map((action: unknown) => own(action, 'description')).find((text) => typeof text === 'string')
    : undefined
  return typeof found === 'string' ? found : ''
}

/** The text that `v.description` put into a schema's pipe, or into that of the schema it wraps. */
const descriptionOf = (schema: unknown): string => pipeDescription(schema) || pipeDescription(unwrap(schema))

/** What a field takes over from the objects and lists that it stands in. */
type Above = { readonly field: string; readonly optional: boolean; readonly meaning: string }

const leaf = (schema: unknown, { field, optional, meaning }: Above): FieldDescription => {
  const range = quantityOf(schema)
  const number = range ?? figureOf(schema)
  const choices = optionsOf(schema).filter((option) => typeof option === 'string')
  return {
    field,
    meaning: number?.meaning ?? meaning,
    unit: number?.unit ?? '',
    min: range?.min ?? null,
    max: range?.max ?? null,
    symbol: number?.symbol ?? null,
    optional,
    default: defaultOf(schema),
    choices: choices.length > 0 ? choices : null,
  }
}

const describeFields = (schema: unknown, above: Above): readonly FieldDescription[] => {
  const here: Above = {
    field: above.field,
    optional: above.optional || own(schema, 'type') === 'optional',
    meaning: descriptionOf(schema) || above.meaning,
  }
  const fields = Object.entries(fieldsOf(schema))
  if (fields.length > 0)
    return fields.flatMap(([key, child]) =>
      describeFields(child, { ...here, field: here.field === '' ? key : `${here.field}.${key}` }),
    )
  const element = elementOf(schema)
  if (element !== undefined) return describeFields(element, { ...here, field: `${here.field}[]` })
  return [leaf(schema, here)]
}

/** The fields of an object schema, with those of nested objects and lists, as plain data. */
export const describeSchema = (schema: unknown): readonly FieldDescription[] =>
  describeFields(schema, { field: '', optional: false, meaning: '' })

/** A source in one line: author, year, title, publisher. */
export const describeSource = (id: SourceId): SourceDescription => {
  const source = SOURCES[id]
  return {
    id,
    text: `${source.author} (${source.year}): ${source.title}. ${source.publisher}.`,
    url: 'url' in source ? source.url : null,
  }
}

/** An item as plain JSON for lists, panels and pages: every number with its meaning, unit and range; sources written out. */
export const describeItem = (item: Item): ItemDescription => ({
  name: item.name,
  title: item.title,
  words: item.words,
  formula: item.formula,
  evidence: item.evidence,
  inputs: describeSchema(item.inputs),
  outputs: describeSchema(item.outputs),
  sources: item.sources.map(describeSource),
  notes: item.notes ?? [],
  checks: item.checks,
})
