import { calculate } from '../catalogue/catalogue.ts'

/** The answer of a calculation that is expected to succeed. Test support: throws with the error otherwise. */
export const answerOf = (name: string, input: unknown): Readonly<Record<string, unknown>> => {
  const outcome = calculate(name, input)
  if (!outcome.ok) throw new Error(`${name}: ${JSON.stringify(outcome.error)}`)
  return outcome.value as Readonly<Record<string, unknown>>
}

/** One number of such an answer. */
export const numberOf = (name: string, input: unknown, field: string): number =>
  Number(answerOf(name, input)[field])

/** The error of a calculation that is expected to fail. */
export const errorOf = (name: string, input: unknown): unknown => {
  const outcome = calculate(name, input)
  if (outcome.ok) throw new Error(`${name} should fail: ${JSON.stringify(outcome.value)}`)
  return outcome.error
}
