import { addDays, isoWithOffset, MINUTE_MS, instantOf, type DayFact } from '@swardwright/engine'
import { planClock, type Facts, type PlanKnown, type Problem } from '@swardwright/journal'
import { dateAt } from '@swardwright/present'

/** Rain that falls now is reckoned to go on for so long (common practice, no source); what the forecast has comes on top. */
const RAIN_GOES_ON_MIN = 60

/** What the journal is read against. */
export type DayKnown = PlanKnown

type When = (at: string) => number | null

/** The same for what lasts: an outage that was told before the plan's first day, but after it was settled, lies in its days too. */
const sinceOf = (known: DayKnown): When => {
  const when = planClock(known)
  return (at) => {
    const isSettledBefore = known.settledAt !== null && Date.parse(at) >= Date.parse(known.settledAt)
    return when(at) ?? (isSettledBefore && Date.parse(at) <= known.nowMs ? Date.parse(at) : null)
  }
}

const steps = (facts: Facts, known: DayKnown): readonly DayFact[] => {
  const { plan, course } = known
  const when = planClock(known)
  type Told = {
    readonly at: string
    readonly value: Pick<Facts['tasksFinished'][number]['value'], 'green' | 'operation' | 'pass' | 'load'>
  }
  type Step = { readonly toldMs: number; readonly fact: DayFact }
  const of = (kind: 'started' | 'finished' | 'stopped', told: readonly Told[]): readonly Step[] =>
    told.flatMap(({ at, value }): readonly Step[] => {
      const { green, operation, pass, load } = value
      const atMs = when(at)
      const isPlanned = plan.tasks.some(
        (task) =>
          task.green === green &&
          task.operation === operation &&
          (task.load === null ? task.pass === (pass ?? 1) : task.load === (load ?? 1)),
      )
      if (atMs === null || !isPlanned) return []
      const fact: DayFact = {
        kind,
        green,
        operation,
        ...(pass === undefined ? {} : { pass }),
        ...(load === undefined ? {} : { load }),
        at: isoWithOffset(atMs, course.timeZone),
      }
      return [{ toldMs: Date.parse(at), fact }]
    })
  // In the order in which they were told: a step can be broken off and taken up again while the course's clock is held.
  return [
    ...of('started', facts.tasksStarted),
    ...of('stopped', facts.tasksStopped),
    ...of('finished', facts.tasksFinished),
  ]
    .toSorted((a, b) => a.toldMs - b.toldMs)
    .map(({ fact }) => fact)
}

const greens = (facts: Facts, known: DayKnown): readonly DayFact[] =>
  finishedGreens(facts, known).map(({ green, atMs }) => ({
    kind: 'finished',
    green,
    at: isoWithOffset(atMs, known.course.timeZone),
  }))

/** Greens of the plan that somebody finished by one tap, with the moment and the entry that says so. */
export const finishedGreens = (
  facts: Facts,
  known: DayKnown,
): readonly { readonly green: string; readonly atMs: number; readonly entry: string }[] => {
  const when = planClock(known)
  return facts.greensFinished.flatMap(({ at, entry, value }) => {
    const atMs = when(at)
    const isPlanned = known.plan.openings.some((opening) => opening.green === value.green)
    return atMs === null || !isPlanned ? [] : [{ green: value.green, atMs, entry }]
  })
}

const rain = (facts: Facts, known: DayKnown): readonly DayFact[] => {
  const when = planClock(known)
  const iso = (ms: number) => isoWithOffset(ms, known.course.timeZone)
  return facts.rain.flatMap(({ began, ended, mmPerH }): readonly DayFact[] => {
    const fromMs = when(began)
    const untilMs = ended === null ? known.nowMs + RAIN_GOES_ON_MIN * MINUTE_MS : when(ended)
    if (fromMs === null || untilMs === null || untilMs <= fromMs) return []
    return [
      {
        kind: 'rain',
        from: iso(fromMs),
        until: iso(untilMs),
        ...(mmPerH === null || mmPerH < 0.1 ? {} : { mmPerH: Math.min(100, mmPerH) }),
      },
    ]
  })
}

/** A problem as a fact. A machine or person that is out and not said to be back is reckoned out to the end of today: nobody knows of tomorrow, and a week is not given up for a belt. */
const problemFact = (problem: Problem, known: DayKnown): readonly DayFact[] => {
  const { course, plan } = known
  const { value, solved } = problem
  const since = sinceOf(known)
  const fromMs = since(problem.at)
  if (fromMs === null) return []
  const at = isoWithOffset(fromMs, course.timeZone)
  const untilMs = solved === null ? null : since(solved.at)
  const isOver = untilMs !== null && untilMs <= fromMs
  const endOfDayMs = instantOf(addDays(dateAt(known.nowMs, course.timeZone), 1), 0, course.timeZone)
  const until = isoWithOffset(untilMs ?? endOfDayMs, course.timeZone)
  switch (value.problem) {
    case 'machineOut':
      return isOver || course.machines.every(({ id }) => id !== value.machine)
        ? []
        : [{ kind: 'machineOut', machine: value.machine, from: at, until }]
    case 'personOut':
      return isOver || course.people.every(({ id }) => id !== value.person)
        ? []
        : [{ kind: 'personOut', person: value.person, from: at, until }]
    case 'late': {
      const { person } = value
      const untilLateMs = Date.parse(value.until)
      const isKnown = person === undefined || course.people.some(({ id }) => id === person)
      const isInDays =
        untilLateMs >= instantOf(plan.start, 0, course.timeZone) &&
        untilLateMs <= Math.max(...plan.tasks.map((task) => Date.parse(task.finish)))
      return solved !== null || !isKnown || !isInDays
        ? []
        : [{ kind: 'late', at: value.until, ...(person === undefined ? {} : { person }) }]
    }
    case 'slower':
      return solved !== null || course.machines.every(({ id }) => id !== value.machine)
        ? []
        : [{ kind: 'slower', machine: value.machine, factor: value.factor }]
    case 'sandShort':
      return solved !== null || fromMs < instantOf(plan.start, 0, course.timeZone)
        ? []
        : [{ kind: 'sandShort', sand: value.sand, massT: value.massT, at }]
    case 'tinesShort': {
      const isCounted = (course.tineSets ?? []).some(({ id }) => id === value.store)
      return solved !== null || !isCounted || fromMs < instantOf(plan.start, 0, course.timeZone)
        ? []
        : [{ kind: 'tinesShort', store: value.store, sets: value.sets, at }]
    }
    case 'green':
    case 'other':
      return []
  }
}

const pins = ({ plan, nowMs }: DayKnown): readonly DayFact[] =>
  (plan.pins ?? [])
    .filter(({ green }) =>
      plan.openings.some((opening) => opening.green === green && Date.parse(opening.opened) > nowMs),
    )
    .map(({ green, date, opens }) =>
      opens === null ? { kind: 'pinned', green, date } : { kind: 'pinned', green, at: opens },
    )

/** What the journal says of the days of a plan, up to now, as the facts from which the plan is made again. What does not concern the plan is left out. */
export const dayFacts = (facts: Facts, known: DayKnown): readonly DayFact[] => [
  ...steps(facts, known),
  ...greens(facts, known),
  ...rain(facts, known),
  ...facts.problems.flatMap((problem) => problemFact(problem, known)),
  ...pins(known),
]
