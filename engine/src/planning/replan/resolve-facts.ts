import type { Course } from '../../course/course.ts'
import { fail, ok, type Result } from '../../result.ts'
import { isoWithOffset, MINUTE_MS } from '../../time/zone.ts'
import { parseInstant } from '../check/instant.ts'
import type { PlanTask } from '../plan.ts'
import type { Problem } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { FactError, FactProblem } from './fact-error.ts'
import type { DayFact } from './facts.ts'
import type { Moment, Outage, Redelivery, Slower, Spell, StockSeen, WishedPin } from './moment.ts'

/** What facts are read against. */
export type FactGround = {
  readonly course: Course
  readonly problem: Problem
  /** Tasks of the plan, for facts that name one. */
  readonly tasks: readonly PlanTask[]
  readonly nowMin: number
}

type Told = {
  readonly fact: Extract<DayFact, { kind: 'started' | 'finished' | 'stopped' }>
  readonly atMin: number
  readonly green: number
  readonly step: number
}

/** Thrown inside this file only, to leave the reading at the first bad fact. */
class Bad extends Error {
  readonly error: FactError
  constructor(error: FactError) {
    super(error.problem)
    this.error = error
  }
}

/** Reads the fields of one fact; every complaint names the fact and the field. */
const reader = (ground: FactGround, index: number, kind: DayFact['kind']) => {
  const { problem, nowMin } = ground
  const bad = (field: string, what: FactProblem, accepted: readonly string[], received: string): never => {
    throw new Bad({ type: 'badFact', index, kind, field, problem: what, accepted, received })
  }
  const iso = (minute: number): string =>
    isoWithOffset(problem.originMs + minute * MINUTE_MS, problem.timeZone)
  const find = (field: string, id: string, list: readonly { readonly id: string }[]): number => {
    const found = list.findIndex((one) => one.id === id)
    return found >= 0
      ? found
      : bad(
          field,
          'unknown',
          list.map((one) => one.id),
          id,
        )
  }
  /** Whole minutes: what happened within a minute has happened at its start. */
  const minute = (field: string, text: string): number => {
    const ms = parseInstant(text)
    if (Number.isNaN(ms)) return bad(field, 'outsideDays', [iso(0), iso(problem.horizonMin)], text)
    return Math.floor((ms - problem.originMs) / MINUTE_MS)
  }
  const inDays = (field: string, text: string): number => {
    const at = minute(field, text)
    return at >= 0 && at <= problem.horizonMin
      ? at
      : bad(field, 'outsideDays', [iso(0), iso(problem.horizonMin)], text)
  }
  const past = (field: string, text: string): number => {
    const at = inDays(field, text)
    return at <= nowMin ? at : bad(field, 'afterNow', [iso(nowMin)], text)
  }
  const span = (
    from: string,
    until: string | null,
  ): { readonly fromMin: number; readonly untilMin: number } => {
    const fromMin = minute('from', from)
    const untilMin = until === null ? NEVER : minute('until', until)
    if (until !== null && untilMin <= fromMin) bad('until', 'endsBeforeStart', [from], until)
    return { fromMin, untilMin }
  }
  return { bad, find, minute, inDays, past, span }
}

type Reader = ReturnType<typeof reader>

/** The step that a fact is about: the last of its green where it names a green alone. */
const stepOf = (
  { problem, tasks }: FactGround,
  read: Reader,
  fact: {
    readonly task?: string | undefined
    readonly green?: string | undefined
    readonly operation?: string | undefined
    readonly pass?: number | undefined
    readonly load?: number | undefined
  },
  alone: boolean,
): { readonly green: number; readonly step: number } => {
  if (fact.task !== undefined && (fact.green !== undefined || fact.operation !== undefined))
    read.bad('task', 'tooMuch', ['task', 'green and operation'], fact.task)
  const task = fact.task === undefined ? undefined : tasks[read.find('task', fact.task, tasks)]
  const id = task === undefined ? fact.green : (task.green ?? undefined)
  if (id === undefined) return read.bad('green', 'missing', ['task', 'green and operation'], '')
  const green = read.find('green', id, problem.greens)
  const steps = problem.greens[green]?.steps ?? []
  const operation = task?.operation ?? fact.operation
  if (operation === undefined)
    return alone
      ? { green, step: steps.length - 1 }
      : read.bad('operation', 'missing', [...new Set(steps.map((step) => step.operation))], '')
  const pass = task?.pass ?? fact.pass
  const load = task?.load ?? fact.load
  const step = steps.findIndex(
    (one) =>
      one.operation === operation &&
      (one.load === null ? one.pass === (pass ?? 1) : one.load === (load ?? 1)),
  )
  const told = [operation, pass, load].filter((part) => part !== undefined && part !== null).join(' ')
  return step >= 0
    ? { green, step }
    : read.bad(
        'operation',
        'unknown',
        steps.map((one) => [one.operation, one.pass, one.load].filter((part) => part !== null).join(' ')),
        told,
      )
}

/** Spells of work on one step from what was told of it, in the order of time. */
const spellsOf = (told: readonly Told[]): readonly Spell[] => {
  const spells: Spell[] = []
  const open = (): Spell | undefined => (spells.at(-1)?.endMin === null ? spells.at(-1) : undefined)
  for (const { fact, atMin } of [...told].sort((a, b) => a.atMin - b.atMin)) {
    const current = open()
    if (fact.kind === 'started') {
      if (current === undefined)
        spells.push({ startMin: atMin, endMin: null, end: 'finished', doneShare: null })
      continue
    }
    const begun = current?.startMin ?? null
    const ended: Spell = {
      // Broken off in the minute in which it was begun: it is told as a minute's work, so that what is left of it is still to be done.
      startMin: fact.kind === 'stopped' && begun !== null ? Math.min(begun, atMin - 1) : begun,
      endMin: atMin,
      end: fact.kind,
      doneShare: fact.kind === 'stopped' ? (fact.doneShare ?? null) : null,
    }
    if (current === undefined) spells.push(ended)
    else spells[spells.length - 1] = ended
  }
  return spells
}

/** The day, index and start of which a date is. */
const dayOfDate = (ground: FactGround, read: Reader, date: string): number => {
  const day = ground.problem.days.findIndex((one) => one.date === date)
  return day >= 0
    ? day
    : read.bad(
        'date',
        'outsideDays',
        ground.problem.days.map((one) => one.date),
        date,
      )
}

const pinOf = (
  ground: FactGround,
  read: Reader,
  fact: Extract<DayFact, { kind: 'pinned' }>,
  index: number,
): WishedPin => {
  const { problem } = ground
  if (fact.operation !== undefined) {
    if (fact.at === undefined) return read.bad('at', 'missing', ['at'], '')
    const { green, step } = stepOf(ground, read, fact, false)
    return {
      kind: 'step',
      green,
      step,
      startMin: read.inDays('at', fact.at),
      machine: fact.machine === undefined ? null : read.find('machine', fact.machine, problem.machines),
      people: fact.people?.map((person) => read.find('people', person, problem.people)) ?? null,
      fact: index,
    }
  }
  const green = read.find('green', fact.green, problem.greens)
  if (fact.machine !== undefined || fact.people !== undefined)
    read.bad('operation', 'missing', ['operation'], '')
  if (fact.at === undefined && fact.date === undefined) return read.bad('date', 'missing', ['date', 'at'], '')
  const openMin = fact.at === undefined ? null : read.inDays('at', fact.at)
  const day =
    openMin === null
      ? dayOfDate(ground, read, fact.date ?? '')
      : problem.days.findIndex(({ endMin }) => openMin < endMin)
  return { kind: 'green', green, day, openMin, fact: index }
}

/** What is gathered while facts are read. */
type Gathered = {
  readonly told: Told[]
  readonly machinesOut: Outage[]
  readonly peopleOut: Outage[]
  readonly slower: Slower[]
  readonly seen: StockSeen[]
  readonly deliveries: Redelivery[]
  readonly pins: WishedPin[]
  readonly skipped: Map<number, { readonly fact: number; readonly why: string | null }>
}

const gather = (ground: FactGround, into: Gathered, fact: DayFact, index: number): void => {
  const { problem, course } = ground
  const read = reader(ground, index, fact.kind)
  switch (fact.kind) {
    case 'started':
    case 'finished':
    case 'stopped': {
      const atMin = read.past('at', fact.at)
      into.told.push({ fact, atMin, ...stepOf(ground, read, fact, fact.kind === 'finished') })
      return
    }
    case 'late': {
      const untilMin = read.inDays('at', fact.at)
      const fromMin = problem.days.findLast(({ startMin }) => startMin < untilMin)?.startMin ?? 0
      const who =
        fact.person === undefined
          ? problem.people.map((_, person) => person)
          : [read.find('person', fact.person, problem.people)]
      for (const person of who) into.peopleOut.push({ index: person, fromMin, untilMin, fact: index })
      return
    }
    case 'machineOut':
      into.machinesOut.push({
        index: read.find('machine', fact.machine, problem.machines),
        ...read.span(fact.from, fact.until),
        fact: index,
      })
      return
    case 'personOut':
      into.peopleOut.push({
        index: read.find('person', fact.person, problem.people),
        ...read.span(fact.from, fact.until),
        fact: index,
      })
      return
    case 'rain':
    case 'dry':
      read.span(fact.from, fact.until)
      read.inDays('from', fact.from)
      return
    case 'slower':
      if (fact.green === undefined && fact.operation === undefined && fact.machine === undefined)
        read.bad('green', 'missing', ['green', 'operation', 'machine'], '')
      into.slower.push({
        green: fact.green === undefined ? null : read.find('green', fact.green, problem.greens),
        operation: fact.operation ?? null,
        machine: fact.machine === undefined ? null : read.find('machine', fact.machine, problem.machines),
        factor: fact.factor,
      })
      return
    case 'sandShort':
      into.seen.push({ stock: fact.sand, atMin: read.past('at', fact.at), amount: fact.massT, fact: index })
      return
    case 'tinesShort': {
      const stock = problem.tines?.[read.find('store', fact.store, course.tineSets ?? [])]?.kind ?? 0
      into.seen.push({ stock, atMin: read.past('at', fact.at), amount: fact.sets, fact: index })
      return
    }
    case 'deliveryLate': {
      const stores = [...course.stores, ...(course.tineSets ?? [])]
      const store = read.find('store', fact.store, stores)
      const dates = stores[store]?.deliveries.map(({ date }) => date) ?? []
      if (!dates.includes(fact.date)) read.bad('date', 'unknown', dates, fact.date)
      into.deliveries.push({
        store,
        date: fact.date,
        atMin: fact.until === null ? NEVER : read.minute('until', fact.until),
      })
      return
    }
    case 'pinned':
      into.pins.push(pinOf(ground, read, fact, index))
      return
    case 'skipped':
      into.skipped.set(read.find('green', fact.green, problem.greens), {
        fact: index,
        why: fact.why ?? null,
      })
  }
}

/** Turns facts into indices and minutes. Errors: the first that does not fit the plan, the course or the moment. */
export const resolveFacts = (ground: FactGround, facts: readonly DayFact[]): Result<Moment, FactError> => {
  const into: Gathered = {
    told: [],
    machinesOut: [],
    peopleOut: [],
    slower: [],
    seen: [],
    deliveries: [],
    pins: [],
    skipped: new Map(),
  }
  try {
    for (const [index, fact] of facts.entries()) gather(ground, into, fact, index)
  } catch (error) {
    if (error instanceof Bad) return fail(error.error)
    throw error
  }
  const { told, ...rest } = into
  return ok({
    ...rest,
    nowMin: ground.nowMin,
    spells: ground.problem.greens.map((green, g) =>
      green.steps.map((_, step) => spellsOf(told.filter((one) => one.green === g && one.step === step))),
    ),
  })
}
