import { NEVER } from '../spans.ts'
import { personBegin } from './person.ts'
import { WISH_MIN } from './recipe.ts'
import type { Run } from './run.ts'
import type { CrewWanted } from './wanted.ts'

/** How much later a start may be so that a machine stays with the person who has it, minutes. Keeps people at one post. */
const KEEP_POST_MIN = 4

/** What a person who did this step in the plan to stay near to is preferred by, minutes. */
const KEEP_PLAN_MIN = 60

/** Minutes for which somebody else would be preferred. */
const reluctance = (run: Run, wanted: CrewWanted, person: number): number => {
  const { ground, hints, recipe } = run
  const operation = ground.operation[wanted.step] ?? 0
  let minutes = recipe.shun[person * ground.operations + operation] ?? 0
  if (wanted.holder >= 0 && wanted.holder !== person) minutes += KEEP_POST_MIN
  const wished = recipe.person[wanted.step] ?? 0
  if (wished > 0 && wished !== person + 1) minutes += WISH_MIN
  if (hints === null || recipe.follow === 0) return minutes
  const row = wanted.step * ground.mostCrew
  for (let n = 0; n < ground.mostCrew; n++) if (hints.people[row + n] === person) return minutes
  return hints.people[row] === -1 ? minutes : minutes + KEEP_PLAN_MIN
}

const isChosen = (run: Run, count: number, person: number): boolean => {
  for (let n = 0; n < count; n++) if (run.crew[n] === person) return true
  return false
}

/** Earliest start of the work for a person, the lead (of the first) included; NEVER when it would not be over in time or not before `limit`. */
const startFor = (run: Run, wanted: CrewWanted, person: number, isFirst: boolean, limit: number): number => {
  const { stretch } = run.scratch
  const lead = isFirst ? wanted.lead : 0
  stretch.minutes = lead + wanted.minutes
  stretch.from = lead > 0 ? wanted.from : wanted.to
  stretch.to = wanted.to
  stretch.atLeast = wanted.start - lead
  stretch.limit = Math.min(limit - 1, wanted.end - wanted.minutes) - lead + 1
  const begin = personBegin(run, person, wanted.day, stretch)
  return begin >= NEVER ? NEVER : begin + lead
}

/** Weighs one person for member `n` of the crew against the best so far; the person is taken when the start, reluctance counted, is sooner. */
const weigh = (run: Run, wanted: CrewWanted, n: number, person: number): void => {
  const { choice } = run.scratch
  const unwilling = reluctance(run, wanted, person)
  if (wanted.start + unwilling >= choice.best || isChosen(run, n, person)) return
  const at = startFor(run, wanted, person, n === 0, choice.best - unwilling)
  if (at >= NEVER || at + unwilling >= choice.best) return
  choice.best = at + unwilling
  choice.start = at
  choice.who = person
}

/** Chooses member `n` of the crew among those not chosen yet: soonest, reluctance counted. Returns the start, NEVER when there is nobody. */
const choose = (run: Run, wanted: CrewWanted, n: number): number => {
  const { ground } = run
  const { choice } = run.scratch
  const operation = ground.operation[wanted.step] ?? 0
  const last = ground.skillFirst[operation + 1] ?? 0
  choice.best = NEVER
  choice.start = NEVER
  choice.who = -1
  // Whoever has the machine first: nobody else need be asked when that costs nothing.
  const isHeld =
    n === 0 && wanted.holder >= 0 && ground.hasSkill[wanted.holder * ground.operations + operation] === 1
  if (isHeld) weigh(run, wanted, n, wanted.holder)
  for (let i = ground.skillFirst[operation] ?? last; i < last && choice.best > wanted.start; i++) {
    const person = ground.skilled[i] ?? 0
    if (!isHeld || person !== wanted.holder) weigh(run, wanted, n, person)
  }
  run.crew[n] = choice.who
  return choice.start
}

/** The crew that a pin names, all starting together as soon as they can. */
const namedCrew = (run: Run, wanted: CrewWanted, named: readonly number[]): number => {
  let start = wanted.start
  for (let round = 0; round <= named.length; round++) {
    const before = start
    wanted.start = start
    named.forEach((person, n) => {
      run.crew[n] = person
      start = Math.max(start, startFor(run, wanted, person, n === 0, NEVER))
    })
    if (start === before || start >= NEVER) return start
  }
  return NEVER
}

/**
 * The soonest crew from `wanted.start` on: one who brings the machine, and as many more as it takes, all starting together. Leaves the people in `run.crew`
 * and returns their start; NEVER when there is none in time.
 */
export const findCrew = (run: Run, wanted: CrewWanted): number => {
  for (let n = 0; n < run.crew.length; n++) run.crew[n] = -1
  const named = run.pins.people.size === 0 ? undefined : run.pins.people.get(wanted.step)
  if (named !== undefined) return namedCrew(run, wanted, named.slice(0, run.crew.length))
  while (wanted.start + wanted.minutes <= wanted.end) {
    let latest = choose(run, wanted, 0)
    if (latest >= NEVER) return NEVER
    wanted.start = latest
    for (let n = 1; n < wanted.crew; n++) {
      const at = choose(run, wanted, n)
      if (at >= NEVER) return NEVER
      if (at > latest) latest = at
    }
    if (latest === wanted.start) return latest
    wanted.start = latest
  }
  return NEVER
}
