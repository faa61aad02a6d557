import { NEVER } from '../spans.ts'
import type { Growing } from './growing.ts'
import { earliestFor } from './people.ts'

/** How much later a start may be so that a machine stays with the person who has it, minutes. Keeps people at one post. */
const KEEP_POST_MIN = 4

/** A stretch of work that looks for its people. */
export type CrewWanted = {
  /** Indices of the people trained for it. */
  readonly skilled: readonly number[]
  readonly crew: number
  /** Who worked the machine last, or -1. */
  readonly holder: number
  /** The work itself starts no earlier; what one of them does before (set-up, ways, filling) takes `leadMin` more. */
  readonly start: number
  readonly leadMin: number
  readonly minutes: number
  /** Where the lead begins and where the work is. */
  readonly from: number
  readonly to: number
  /** The work is over by then. */
  readonly end: number
}

/** When a crew can start, and who; the first is the one who brings the machine. */
export type Crew = { readonly start: number; readonly people: readonly number[] }

/** Earliest start of the work for one person, with or without the lead; NEVER when not before the end. */
const startFor = (
  growing: Growing,
  wanted: CrewWanted,
  person: number,
  start: number,
  leadMin: number,
): number => {
  const { problem } = growing.ground
  const who = problem.people[person]
  const diary = growing.diaries[person]
  if (who === undefined || diary === undefined) return NEVER
  const stretch = {
    atLeast: start - leadMin,
    minutes: leadMin + wanted.minutes,
    from: leadMin > 0 ? wanted.from : wanted.to,
    to: wanted.to,
  }
  const begin = earliestFor(problem, who, diary, stretch, wanted.end - leadMin - wanted.minutes + 1)
  return begin === NEVER ? NEVER : begin + leadMin
}

/** Who can start soonest from `start` on; the holder when that costs little. */
const bringer = (
  growing: Growing,
  wanted: CrewWanted,
  start: number,
): { readonly person: number; readonly at: number } => {
  const { holder, leadMin } = wanted
  const held = wanted.skilled.includes(holder) ? startFor(growing, wanted, holder, start, leadMin) : NEVER
  if (held === start) return { person: holder, at: held }
  let person = -1
  let at = NEVER
  for (const other of wanted.skilled) {
    const soonest = other === holder ? held : startFor(growing, wanted, other, start, leadMin)
    if (soonest >= at) continue
    person = other
    at = soonest
    if (at === start) break
  }
  return held <= at + KEEP_POST_MIN ? { person: holder, at: held } : { person, at }
}

/** The others of a crew who can all start at `start`; where not, the soonest minute at which enough of them could. */
const others = (
  growing: Growing,
  wanted: CrewWanted,
  first: number,
  start: number,
): { readonly people: readonly number[]; readonly at: number } => {
  const ready = wanted.skilled
    .filter((person) => person !== first)
    .map((person) => ({ person, at: startFor(growing, wanted, person, start, 0) }))
    .sort((a, b) => a.at - b.at || a.person - b.person)
    .slice(0, wanted.crew - 1)
  return {
    people: ready.map(({ person }) => person),
    at: ready.length < wanted.crew - 1 ? NEVER : ready.reduce((late, { at }) => Math.max(late, at), start),
  }
}

/** The soonest crew: one who brings the machine, and as many more as it takes, all starting together. Null when there is none in time. */
export const findCrew = (growing: Growing, wanted: CrewWanted): Crew | null => {
  let { start } = wanted
  while (start + wanted.minutes <= wanted.end) {
    const first = bringer(growing, wanted, start)
    if (first.at === NEVER) return null
    if (wanted.crew === 1) return { start: first.at, people: [first.person] }
    const more = others(growing, wanted, first.person, first.at)
    if (more.at === NEVER) return null
    if (more.at === first.at) return { start: first.at, people: [first.person, ...more.people] }
    start = more.at
  }
  return null
}
