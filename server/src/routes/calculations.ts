import { CATALOGUE, calculate, describeItem, ok } from '@swardwright/engine'
import type { Handler } from './registrar.ts'

/** Lists the catalogue. It never changes while the server runs, so it is worked out once. */
export const listCalculations = (): Handler<'calculations'> => {
  const cards = CATALOGUE.map((item) => {
    const { checks, ...card } = describeItem(item)
    return { ...card, checks: checks.map((check) => ({ ...check })) }
  })
  return async () => ok(cards)
}

/** Runs one calculation; no body counts as an empty input. */
export const runCalculation =
  (): Handler<'calculate'> =>
  async ({ params, body }) =>
    calculate(params.name, body === undefined ? {} : body)
