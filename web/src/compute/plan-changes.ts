import type { Plan } from '@swardwright/engine'

/** What happened to one green between two plans. */
export type GreenChange = {
  readonly green: string
  readonly change: 'earlier' | 'later' | 'leftOut' | 'tookIn'
  /** When it was to be opened, and is now; null where it was or is not planned. */
  readonly was: string | null
  readonly now: string | null
}

const openedBy = (plan: Pick<Plan, 'openings'>): ReadonlyMap<string, string> =>
  new Map(plan.openings.map((opening) => [opening.green, opening.opened]))

const changeOf = (was: string | null, now: string | null): GreenChange['change'] | null => {
  if (was === null) return now === null ? null : 'tookIn'
  if (now === null) return 'leftOut'
  const byMs = Date.parse(now) - Date.parse(was)
  return byMs === 0 ? null : byMs < 0 ? 'earlier' : 'later'
}

/** Greens that open at another time, are left out, or are taken in again; greens that stay are not named. In the order of the new plan. */
export const planChanges = (
  before: Pick<Plan, 'openings'>,
  after: Pick<Plan, 'openings'>,
): readonly GreenChange[] => {
  const [was, now] = [openedBy(before), openedBy(after)]
  const greens = [...new Set([...now.keys(), ...was.keys()])]
  return greens
    .flatMap((green): readonly GreenChange[] => {
      const times = { was: was.get(green) ?? null, now: now.get(green) ?? null }
      const change = changeOf(times.was, times.now)
      return change === null ? [] : [{ green, change, ...times }]
    })
    .sort((a, b) => Date.parse(a.now ?? a.was ?? '') - Date.parse(b.now ?? b.was ?? ''))
}

/** Greens whose first day changed: what a manager has to ring about. */
export const movedToAnotherDay = (changes: readonly GreenChange[]): readonly GreenChange[] =>
  changes.filter(
    ({ was, now, change }) =>
      change === 'leftOut' || change === 'tookIn' || was?.slice(0, 10) !== now?.slice(0, 10),
  )
