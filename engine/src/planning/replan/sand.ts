import type { Problem } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { Field } from './field.ts'

/** Grams that rounding may hide. */
const ROUNDING_T = 1e-9

/** Tonnes of a kind that lay in the bays or had come by a minute. */
export const supplyT = (problem: Problem, kind: 'damp' | 'kilnDried', minute: number): number => {
  let sum = 0
  for (const store of problem.stores) {
    if (store.kind !== kind) continue
    sum += store.stockT
    for (const delivery of store.deliveries) if (delivery.atMin <= minute) sum += delivery.massT
  }
  return sum
}

/** Earliest minute from `from` on at which so much more sand can be taken and no later draw goes short; NEVER where it does not suffice. */
export const sandFrom = (
  { problem, draws }: Field,
  kind: 'damp' | 'kilnDried',
  from: number,
  massT: number,
): number => {
  const own = draws.filter((draw) => draw.kind === kind)
  const planned = own.reduce((sum, draw) => sum + draw.massT, 0)
  if (planned + massT <= supplyT(problem, kind, from) + ROUNDING_T) return from
  const enough = (minute: number): boolean =>
    [minute, ...own.filter((draw) => draw.atMin > minute).map((draw) => draw.atMin)].every((moment) => {
      const drawn = own.reduce((sum, draw) => sum + (draw.atMin <= moment ? draw.massT : 0), 0)
      return drawn + massT <= supplyT(problem, kind, moment) + ROUNDING_T
    })
  if (enough(from)) return from
  const later = problem.stores
    .flatMap((store) => (store.kind === kind ? store.deliveries.map(({ atMin }) => atMin) : []))
    .filter((minute) => minute > from)
    .sort((a, b) => a - b)
  return later.find(enough) ?? NEVER
}
