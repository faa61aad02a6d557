import type { Course, Green, TineStore } from '../course/course.ts'
import type { GreenWork } from './green-work.ts'
import type { ChainStep, TineSetting } from './prescription.ts'
import type { ProblemTines, TineUse } from './problem.ts'
import { minuteAt } from './read-crew.ts'

/** A kind of tine. */
export type Tine = Pick<TineStore, 'holeDiameterMm' | 'coreDiameterMm'>

/** A kind of tine in a short text: '12/9', outside and inside, mm. */
export const kindOf = ({ holeDiameterMm, coreDiameterMm }: Tine): string =>
  `${holeDiameterMm}/${coreDiameterMm}`

/** Kinds of tine that the club keeps count of, each once, in the order of the course. */
const kindsOf = ({ tineSets = [] }: Course): readonly string[] => [...new Set(tineSets.map(kindOf))]

/**
 * Sets that one covering of a green wears out: `sets = area / mean area of the course's greens / setLifeGreens`, so that a large green wears more than a small one (common practice,
 * no source: wear goes with the holes made).
 */
export const wornSets = (course: Course, green: Green, { setLifeGreens }: TineSetting): number => {
  const meanM2 = course.greens.reduce((sum, { areaM2 }) => sum + areaM2, 0) / course.greens.length
  return green.areaM2 / meanM2 / setLifeGreens
}

/** What one covering of a green takes of the sets in stock. Undefined where nothing is tined or that kind is not counted. */
export const tineUse = (course: Course, green: Green, { tines }: ChainStep): TineUse | undefined => {
  if (tines === undefined) return undefined
  const kind = kindsOf(course).indexOf(kindOf(tines))
  return kind < 0 ? undefined : { kind, sets: wornSets(course, green, tines) }
}

/** The tine sets of a course over time; undefined where the club keeps no count. */
export const readTineSets = (course: Course, originMs: number): readonly ProblemTines[] | undefined => {
  const kinds = kindsOf(course)
  return course.tineSets?.map((store) => ({
    kind: kinds.indexOf(kindOf(store)),
    sets: store.sets,
    deliveries: store.deliveries.map(({ date, time, sets }) => ({
      atMin: minuteAt(course, originMs, date, time),
      sets,
    })),
  }))
}

/** Kinds that the prescription asks for and the club, which counts others, does not: they are taken to be at hand. */
export const uncountedTines = (course: Course, works: readonly GreenWork[]): readonly string[] => {
  if (course.tineSets === undefined) return []
  const asked = works.flatMap(({ group }) =>
    group.chain.flatMap(({ tines }) => (tines === undefined ? [] : [kindOf(tines)])),
  )
  const kinds = kindsOf(course)
  return [...new Set(asked)].filter((kind) => !kinds.includes(kind)).sort()
}
