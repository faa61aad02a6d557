import { CATALOGUE, calculate } from '@swardwright/engine'
import { ok } from '@swardwright/engine'
import { calculationCard } from '../calculationCard.ts'
import type { Handler } from './registrar.ts'

/** Lists the catalogue. It never changes while the server runs, so it is worked out once. */
export const listCalculations = (): Handler<'calculations'> => {
  const cards = CATALOGUE.map((item) => {
    const { sources, checks, ...card } = calculationCard(item)
    return { ...card, sources: [...sources], checks: [...checks] }
  })
  return async () => ok(cards)
}

/** Runs one calculation; no body counts as an empty input. */
export const runCalculation =
  (): Handler<'calculate'> =>
  async ({ params, body }) =>
    calculate(params.name, body === undefined ? {} : body)
