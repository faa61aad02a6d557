import {
  calculate,
  describeItem,
  findItem,
  type CalculationError,
  type FieldDescription,
  type ItemDescription,
} from '@swardwright/engine'

/** One figure or word that went in or came out, with its meaning and unit. */
export type UsedField = Pick<FieldDescription, 'field' | 'meaning' | 'unit' | 'symbol'> & {
  readonly value: string | number | boolean
}

/** Where a number comes from: the catalogue’s description of the calculation, what went in, what came out. */
export type NumberOrigin = {
  readonly item: ItemDescription
  readonly inputs: readonly UsedField[]
  readonly outputs: readonly UsedField[]
  /** Set when the calculation has no answer for this input. */
  readonly error: CalculationError | null
}

/** Every single value of an input or output with its path, `layers[0].toMm`. */
const leaves = (value: unknown, path: string): readonly (readonly [string, UsedField['value']])[] => {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean')
    return [[path, value]]
  if (Array.isArray(value)) return value.flatMap((one, at) => leaves(one, `${path}[${at}]`))
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, one]) => leaves(one, path === '' ? key : `${path}.${key}`))
}

const described = (fields: readonly FieldDescription[], value: unknown): readonly UsedField[] =>
  leaves(value, '').flatMap(([path, leaf]) => {
    const found = fields.find((field) => field.field === path.replaceAll(/\[\d+\]/gu, '[]'))
    return found === undefined
      ? []
      : [{ field: path, meaning: found.meaning, unit: found.unit, symbol: found.symbol, value: leaf }]
  })

/** Looks a number up in the catalogue; null for a name that it does not have. */
export const originOf = (name: string, input: unknown): NumberOrigin | null => {
  const found = findItem(name)
  if (found === undefined) return null
  const item = describeItem(found)
  const answer = calculate(name, input)
  return {
    item,
    inputs: described(item.inputs, input),
    outputs: answer.ok ? described(item.outputs, answer.value) : [],
    error: answer.ok ? null : answer.error,
  }
}
