import type { Operation } from '../operations.ts'
import type { Problem, ProblemDay, ProblemPerson, Span } from '../problem.ts'
import { merged } from './spans.ts'

/** The shed's index in the places of every problem. */
export const SHED = 0

/** One evening: from dark to midnight, and on to the next sunrise. */
export type Evening = { readonly untilMidnight: Span; readonly untilSunrise: Span }

/** A problem with the indices and merged spans that every check needs; made once, used for any number of plans. */
export type CompiledProblem = {
  readonly problem: Problem
  /** Greens of the problem in its order, then excluded ones that the problem has no steps for. */
  readonly greenIds: readonly string[]
  readonly greenPlaces: readonly (number | null)[]
  readonly greenIndex: ReadonlyMap<string, number>
  readonly machineIndex: ReadonlyMap<string, number>
  readonly personIndex: ReadonlyMap<string, number>
  /** By green: indices of steps by `stepKey`. A chain may list one operation twice. */
  readonly stepsByKey: readonly ReadonlyMap<string, readonly number[]>[]
  readonly available: readonly (readonly Span[])[]
  readonly shifts: readonly (readonly Span[])[]
  readonly workable: ReadonlyMap<Operation, readonly Span[]>
  readonly evenings: readonly Evening[]
  /** Greens left out because a service under them is not located. */
  readonly servicesMissing: ReadonlySet<number>
}

/** What tells one step of a green from another. */
export const stepKey = (operation: string, pass: number, load: number | null): string =>
  `${operation} ${pass} ${load ?? '-'}`

const indexById = (list: readonly { readonly id: string }[]): ReadonlyMap<string, number> =>
  new Map(list.map(({ id }, index) => [id, index]))

const keysOfSteps = (green: Problem['greens'][number]): ReadonlyMap<string, readonly number[]> => {
  const byKey = new Map<string, number[]>()
  for (const [index, step] of green.steps.entries()) {
    const key = stepKey(step.operation, step.pass, step.load)
    byKey.set(key, [...(byKey.get(key) ?? []), index])
  }
  return byKey
}

const eveningsOf = (days: readonly ProblemDay[]): readonly Evening[] =>
  days.map((day, index) => ({
    untilMidnight: { start: day.darkMin, end: day.endMin },
    untilSunrise: { start: day.darkMin, end: days[index + 1]?.sunriseMin ?? day.endMin },
  }))

const shiftsOf = (person: ProblemPerson): readonly Span[] => merged(person.shifts)

/** Prepares a problem for checking. Costs about as much as one check. */
export const compileProblem = (problem: Problem): CompiledProblem => {
  const known = indexById(problem.greens)
  const without = [...new Set(problem.excluded.map(({ green }) => green))].filter((id) => !known.has(id))
  const greenIds = [...problem.greens.map(({ id }) => id), ...without]
  const greenIndex = new Map(greenIds.map((id, index) => [id, index]))
  const placeIndex = new Map(problem.places.map((id, index) => [id, index]))
  return {
    problem,
    greenIds,
    greenPlaces: greenIds.map((id, index) => problem.greens[index]?.place ?? placeIndex.get(id) ?? null),
    greenIndex,
    machineIndex: indexById(problem.machines),
    personIndex: indexById(problem.people),
    stepsByKey: problem.greens.map(keysOfSteps),
    available: problem.machines.map(({ available }) => merged(available)),
    shifts: problem.people.map(shiftsOf),
    workable: new Map([...problem.workable].map(([operation, spans]) => [operation, merged(spans)])),
    evenings: eveningsOf(problem.days),
    servicesMissing: new Set(
      problem.excluded
        .filter(({ reason }) => reason === 'servicesNotLocated')
        .map(({ green }) => greenIndex.get(green) ?? -1),
    ),
  }
}
