import { describe, expect, it } from 'vitest'
import { CATALOGUE, calculate } from './catalogue.ts'
import { randomFrom, randomInput } from './random-input.ts'

const INPUTS_PER_ITEM = 10_000

/** Seeds that once found a fault are added to this list and stay. */
const SEEDS: readonly number[] = [20_260_401]

const ERROR_TYPES: readonly string[] = ['missing', 'wrongType', 'outOfRange', 'notDefined']

/** The path of the first number that is not finite, or undefined. */
const notFinite = (value: unknown, path = ''): string | undefined => {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path}: ${value}`
  if (typeof value !== 'object' || value === null) return undefined
  for (const [key, child] of Object.entries(value)) {
    const found = notFinite(child, `${path}.${key}`)
    if (found !== undefined) return found
  }
  return undefined
}

/** What is wrong with the outcome of one input, or undefined; it must not throw either. */
const faultOf = (
  name: string,
  input: unknown,
): { readonly fault: string | undefined; readonly ok: boolean } => {
  const outcome = calculate(name, input, { draws: 100 })
  if (outcome.ok) return { fault: notFinite(outcome.value), ok: true }
  const { error } = outcome
  const known = ERROR_TYPES.includes(error.type) && 'field' in error && error.field !== ''
  return { fault: known ? undefined : JSON.stringify(error), ok: false }
}

describe.each(SEEDS)('with seed %i', (seed) => {
  it.each(CATALOGUE.map((item) => [item.name, item] as const))(
    '%s answers 10,000 random inputs with finite numbers or a typed error',
    (name, item) => {
      const random = randomFrom(seed)
      let answered = 0
      for (let i = 0; i < INPUTS_PER_ITEM; i++) {
        const input = randomInput(item, random)
        const { fault, ok } = faultOf(name, input)
        if (fault !== undefined) expect.fail(`input ${i} (${JSON.stringify(input)}): ${fault}`)
        if (ok) answered++
      }
      // A fuzz that never gets past the checks of the input would prove nothing about the formula.
      expect(answered).toBeGreaterThan(INPUTS_PER_ITEM / 50)
      expect(answered).toBeLessThan(INPUTS_PER_ITEM)
    },
  )
})
