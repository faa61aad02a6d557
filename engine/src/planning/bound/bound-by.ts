import * as v from 'valibot'
import { id } from '../../course/course.ts'

const minutes = v.pipe(v.number(), v.integer(), v.minValue(0))
const count = v.pipe(v.number(), v.integer(), v.minValue(0))

/** Machines or people, by id. */
export const resourceName = v.variant('kind', [
  v.object({ kind: v.literal('machines'), machines: v.array(id) }),
  v.object({ kind: v.literal('people'), people: v.array(id) }),
])

/** Which part of a lower bound binds, with its figures. Closed. */
export const boundBy = v.variant('part', [
  /** What is done or running ends then. */
  v.object({ part: v.literal('standing') }),
  /** The longest chain, from now to its end, as if everything stood waiting for it. */
  v.object({ part: v.literal('chain'), green: id }),
  /** The last sand comes late. */
  v.object({ part: v.literal('sand'), kind: v.picklist(['damp', 'kilnDried']) }),
  /** All that only these can do: minutes of machines or of people, with ways and fillings where they are certain. */
  v.object({ part: v.literal('bottleneck'), resource: resourceName, workMin: minutes }),
  /** Opened and finished in one dry stretch: so many of the greens still to be opened at most in each, one minute sooner. */
  v.object({ part: v.literal('windows'), greens: count, mostByWindow: v.array(count) }),
  /** So many greens in work at once, all together in work for so long. */
  v.object({ part: v.literal('openGreens'), cap: count, workMin: minutes }),
])

export type ResourceName = Readonly<v.InferOutput<typeof resourceName>>
export type BoundBy = Readonly<v.InferOutput<typeof boundBy>>
