import type { Fixture } from '../../course/course.ts'

/** A competition that a renovation meets: while work goes on, or after it while greens are not yet back. */
export type Clash = { readonly fixture: string; readonly when: 'work' | 'healing' }

/** From when to when greens are away from play. */
export type Away = {
  readonly firstDay: string
  /** Day on which the last green was finished; null when some are not. */
  readonly finishedOn: string | null
  /** First day on which all are in play again, or on which nothing is known any more. */
  readonly until: string
}

/** Competitions on worked greens, by day, from the first day of work until the greens are in play again. */
export const clashesOf = (
  fixtures: readonly Fixture[],
  worked: ReadonlySet<string>,
  { firstDay, finishedOn, until }: Away,
): readonly Clash[] =>
  fixtures
    .filter(({ greens }) => greens === 'all' || greens.some((green) => worked.has(green)))
    .filter(({ date }) => date >= firstDay && (date < until || date === finishedOn))
    .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    .map(({ id, date }) => ({
      fixture: id,
      when: finishedOn === null || date <= finishedOn ? 'work' : 'healing',
    }))
