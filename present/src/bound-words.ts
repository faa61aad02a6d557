import type { Course, Plan } from '@swardwright/engine'
import { decimal, listed } from './numbers.ts'
import { planNames } from './plan-words.ts'
import { clock, dateAt, dayWords, durationWords } from './times.ts'

type Bound = NonNullable<Plan['bound']>

const nameIn = (names: ReadonlyMap<string, string>, id: string): string => names.get(id) ?? id

/** Why nothing is sooner, in a few words. */
const reasonWords = ({ by }: Bound, course: Course): string => {
  const names = planNames(course, { tasks: [] })
  if (by.part === 'standing') return 'what is under way ends then'
  if (by.part === 'chain') return `${nameIn(names.greens, by.green)} alone takes as long`
  if (by.part === 'sand') return `the last ${by.kind === 'damp' ? 'damp' : 'kiln-dried'} sand comes late`
  if (by.part === 'windows') return `only so many greens fit into each dry stretch of a day`
  if (by.part === 'openGreens') return `no more than ${by.cap} greens may be in work at once`
  const { resource } = by
  const who =
    resource.kind === 'machines'
      ? resource.machines.map((id) => nameIn(names.machines, id))
      : resource.people.map((id) => nameIn(names.people, id))
  return `${listed(who)} ${who.length === 1 ? 'has' : 'have'} ${durationWords(by.workMin)} of work that nobody else can do`
}

/**
 * How good a plan is, as one sentence: 'No plan of these greens ends before Wed 12 Aug at 09:50 (the last damp sand comes late); of this plan's working time at most 12 % could be saved'
 * Null where the plan has no bound.
 */
export const boundSentence = (plan: Plan, course: Course): string | null => {
  const { bound } = plan
  if (bound === undefined) return null
  const { timeZone } = course
  const when = `${dayWords(dateAt(bound.finish, timeZone))} at ${clock(bound.finish, timeZone)}`
  const gap =
    bound.gapPercent === 0
      ? 'this one is as good as any'
      : `of this plan's working time at most ${decimal(bound.gapPercent, 1)} % could be saved`
  return `No plan of these greens ends before ${when} (${reasonWords(bound, course)}); ${gap}`
}
