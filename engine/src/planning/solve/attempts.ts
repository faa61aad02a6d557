import type { Problem } from '../problem.ts'

/** What a green may be asked to bear in a window. */
export type Attempt = {
  /** True: a fixture that names the green forbids work on it then. False: the clash is taken. */
  readonly keepFixtures: boolean
  /** True: once cleared, the green may stand a dry night. */
  readonly overNight: boolean
  /** What a pin on the green may break, by degrees. */
  readonly lets: Lets
}

/**
 * What a pin may break: nothing (0); the cap and the first green's check (1); rain, dark and the one day too (2); the hours in which the pinned step may be worked
 * too (3). Machines, people, ways, sand and the chain are held to always.
 */
export type Lets = 0 | 1 | 2 | 3

/**
 * Sets of attempts, kindest first: fixtures kept and no night; then a dry night where the club allows it; then fixtures given up.
 * A later set is only worth generating when an earlier one leaves greens out.
 */
export const attemptSets = (problem: Problem): readonly (readonly Attempt[])[] => {
  const plain: readonly Attempt[] = [{ keepFixtures: true, overNight: false, lets: 0 }]
  const night: readonly Attempt[] = problem.settings.mayStandDryNight
    ? [...plain, { keepFixtures: true, overNight: true, lets: 0 }]
    : plain
  const clash = [...night, ...night.map((attempt) => ({ ...attempt, keepFixtures: false }))]
  const hasFixtures = problem.greens.some((green) => green.fixtures.length > 0)
  return [plain, ...(night.length > 1 ? [night] : []), ...(hasFixtures ? [clash] : [])]
}
