import type { Operation } from '../../operations.ts'
import { SHED } from '../compile.ts'
import type { LostGround } from './left-of-green.ts'

/** Who may be on a piece of work, as bits, from each of several minutes on until the next; nobody before the first. In order of time. */
export type Duty = readonly { readonly fromMin: number; readonly who: number }[]

/** Who may be on it at a minute. */
export const whoAt = (duty: Duty, minute: number): number => {
  let who = 0
  for (const change of duty) {
    if (change.fromMin > minute) break
    who = change.who
  }
  return who
}

/** Tells of work who is trained for one of its operations, on shift, and could have come to its place with nothing else to do from now on. Answers are kept. */
export const dutiesOf = ({
  facts,
  nowMin,
  people,
}: LostGround): ((operations: readonly Operation[], place: number) => Duty) => {
  const { problem, compiled } = facts
  const known = new Map<string, Duty>()
  const reckon = (operations: readonly Operation[], place: number): Duty => {
    const spans = people.flatMap(({ person, freeMin, place: stands }) =>
      operations.some((operation) => problem.people[person]?.skills.has(operation))
        ? (compiled.shifts[person] ?? []).flatMap(({ start, end }) => {
            const isOn = freeMin > start
            const way = problem.personTravelMin[(isOn ? stands : SHED) * problem.places.length + place] ?? 0
            const from = Math.max(nowMin, (isOn ? freeMin : start) + way)
            return from < end ? [{ from, end, bit: 1 << person }] : []
          })
        : [],
    )
    const moments = [...new Set(spans.flatMap(({ from, end }) => [from, end]))].sort((a, b) => a - b)
    return moments.map((fromMin) => ({
      fromMin,
      who: spans.reduce((all, { from, end, bit }) => (from <= fromMin && fromMin < end ? all | bit : all), 0),
    }))
  }
  return (operations, place) => {
    const key = `${operations.join(' ')} ${place}`
    const found = known.get(key) ?? reckon(operations, place)
    known.set(key, found)
    return found
  }
}
