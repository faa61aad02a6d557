import type { ProblemStore } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { Growing } from './growing.ts'

/** Grams of sand that rounding may hide. */
const ROUNDING_T = 1e-9

const supplyAt = (stores: readonly ProblemStore[], minute: number): number =>
  stores.reduce(
    (sum, store) =>
      sum + store.stockT + store.deliveries.reduce((more, d) => more + (d.atMin <= minute ? d.massT : 0), 0),
    0,
  )

/**
 * Earliest minute at or after `from` from which `massT` more of this kind can be taken so that no later draw goes short.
 * NEVER when the sand does not suffice.
 */
export const sandFrom = (
  growing: Growing,
  kind: 'damp' | 'kilnDried',
  from: number,
  massT: number,
): number => {
  const stores = growing.ground.problem.stores.filter((store) => store.kind === kind)
  const draws = growing.draws.filter((draw) => draw.kind === kind)
  const enough = (minute: number): boolean => {
    const moments = [minute, ...draws.filter((draw) => draw.atMin > minute).map((draw) => draw.atMin)]
    return moments.every((moment) => {
      const drawn = draws.reduce((sum, draw) => sum + (draw.atMin <= moment ? draw.massT : 0), 0)
      return drawn + massT <= supplyAt(stores, moment) + ROUNDING_T
    })
  }
  // What lies there now carries all that is planned so far: then no later moment can be short, and none need be looked at.
  const planned = draws.reduce((sum, draw) => sum + draw.massT, 0)
  if (planned + massT <= supplyAt(stores, from) || enough(from)) return from
  const later = stores
    .flatMap((store) => store.deliveries.map((d) => d.atMin))
    .filter((minute) => minute > from)
    .sort((a, b) => a - b)
  return later.find(enough) ?? NEVER
}
