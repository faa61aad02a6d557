import { describe, expect, it } from 'vitest'
import { CATALOGUE, calculate } from './catalogue.ts'
import type { Check } from './item.ts'

/** Follows a path such as `layers[0].organicPercent` into an output. */
const valueAt = (output: unknown, path: string): unknown =>
  path
    .split(/[.[\]]+/u)
    .filter((part) => part !== '')
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], output)

const numberOf = (name: string, check: Check): number => {
  const result = calculate(name, check.input)
  if (!result.ok) throw new Error(`${name} ${check.id}: ${JSON.stringify(result.error)}`)
  return Number(valueAt(result.value, check.output)) * (check.factor ?? 1)
}

describe.each(CATALOGUE.map((entry) => [entry.name, entry] as const))('%s', (name, entry) => {
  it('has at least one row to be checked against', () => {
    expect(entry.checks.length).toBeGreaterThan(0)
  })

  it.each(entry.checks.map((check) => [check.id, check] as const))(
    'reproduces row %s of its source',
    (_id, check) => {
      expect(Math.abs(numberOf(name, check) - check.expected)).toBeLessThanOrEqual(check.tolerance + 1e-12)
    },
  )
})
