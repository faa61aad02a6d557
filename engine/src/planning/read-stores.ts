import type { Course } from '../course/course.ts'
import type { Places } from './places.ts'
import type { ProblemStore } from './problem.ts'
import { minuteAt } from './read-crew.ts'

/** Tonnes in a bay of unknown stock: more than any course can spread. */
const UNKNOWN_STOCK_T = 1_000_000

/** The sand of a course over time. A kind that is prescribed but stands in no store counts as enough, at the shed; the caller lists that as assumed. */
export const readStores = (
  course: Course,
  originMs: number,
  places: Places,
  kinds: ReadonlySet<'damp' | 'kilnDried'>,
): { readonly stores: readonly ProblemStore[]; readonly unknown: readonly ('damp' | 'kilnDried')[] } => {
  const stores = course.stores.map((store) => ({
    kind: store.kind,
    place: Math.max(0, places.ids.indexOf(store.place)),
    stockT: store.stockT,
    deliveries: store.deliveries.map((d) => ({
      atMin: minuteAt(course, originMs, d.date, d.time),
      massT: d.massT,
    })),
  }))
  const unknown = [...kinds].filter((kind) => !stores.some((store) => store.kind === kind)).sort()
  return {
    stores: [
      ...stores,
      ...unknown.map((kind) => ({ kind, place: 0, stockT: UNKNOWN_STOCK_T, deliveries: [] })),
    ],
    unknown,
  }
}
