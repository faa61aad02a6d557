import { NEVER } from '../spans.ts'
import { earliest } from './diary.ts'
import type { Field } from './field.ts'
import type { Leads } from './leads.ts'

/** How much longer a step may wait, in minutes, rather than go to another machine or to another person. Infinity: it waits for ever. */
export type Loyalty = { readonly machineMin: number; readonly personMin: number }

/** A piece of work that looks for its people. */
export type CrewWanted = {
  readonly skilled: readonly number[]
  readonly crew: number
  /** Who is to do it; the first brings the machine. Empty where nobody is named. */
  readonly wished: readonly number[]
  readonly leads: Leads
  readonly minutes: number
  readonly goal: number
  /** It is over by then. */
  readonly end: number
  readonly personMin: number
}

/** When it starts and who does it; `cost` is the start and what the change of people is worth. */
export type Crew = { readonly start: number; readonly people: readonly number[]; readonly cost: number }

const soonest = (
  field: Field,
  wanted: CrewWanted,
  person: number,
  start: number,
  brings: boolean,
): number => {
  const diary = field.diaries[person]
  if (diary === undefined) return NEVER
  const lead = brings ? wanted.leads.minutes : 0
  const begin = earliest(
    field.problem,
    diary,
    {
      atLeast: start - lead,
      minutes: lead + wanted.minutes,
      from: lead > 0 ? wanted.leads.from : wanted.goal,
      to: wanted.goal,
    },
    wanted.end,
  )
  return begin >= NEVER ? NEVER : begin + lead
}

type Ranked = { readonly person: number; readonly at: number; readonly cost: number }

const byCost = (a: Ranked, b: Ranked): number => a.cost - b.cost || a.at - b.at || a.person - b.person

const ranked = (
  field: Field,
  wanted: CrewWanted,
  who: readonly number[],
  start: number,
  brings: boolean,
): readonly Ranked[] =>
  who
    .map((person): Ranked => {
      const at = soonest(field, wanted, person, start, brings)
      const wished = wanted.wished.length === 0 || wanted.wished.includes(person)
      // Who stays on the same task should also stay the one who brings the machine: half a change.
      const strange = !wished
        ? wanted.personMin
        : brings && wanted.wished[0] !== person
          ? wanted.personMin / 2
          : 0
      return { person, at, cost: at >= NEVER ? NEVER : at + (wanted.wished.length === 0 ? 0 : strange) }
    })
    .filter(({ at, cost }) => at < NEVER && cost < Infinity)
    .sort(byCost)

/** The people for a piece of work from `start` on: those wished for, others where waiting for them costs more than the change. Null where there is no crew in time. */
export const crewFor = (field: Field, wanted: CrewWanted, from: number): Crew | null => {
  let start = from
  while (start + wanted.minutes <= wanted.end) {
    const first = ranked(field, wanted, wanted.skilled, start, true)[0]
    if (first === undefined) return null
    const others = wanted.skilled.filter((person) => person !== first.person)
    const more =
      wanted.crew === 1 ? [] : ranked(field, wanted, others, start, false).slice(0, wanted.crew - 1)
    if (more.length < wanted.crew - 1) return null
    const at = Math.max(first.at, ...more.map((one) => one.at))
    if (at === start) {
      const strange = [first, ...more].reduce((sum, one) => sum + one.cost - one.at, 0)
      return { start, people: [first.person, ...more.map(({ person }) => person)], cost: start + strange }
    }
    start = at
  }
  return null
}
