import {
  chainMarks,
  intersectSpans,
  mergeSpans,
  subtractSpans,
  type Problem,
  type Schedule,
  type ScheduledTask,
  type Span,
} from '@swardwright/engine'
import type { Engine, Expression, Interval, Literal, Model, Solver } from './greens-engine.ts'
import { leastLeadMin, mornings, refillMin } from './greens-leads.ts'

/** Which plans are looked for; as the bound has it. */
export type ModelFor = {
  readonly greens: readonly number[]
  readonly keepFixtures: boolean
  readonly oneDay: boolean
}

type Choice = { readonly machine: number; readonly minutes: number; readonly chosen: Literal }

/** The variables of one step. */
export type StepVars = {
  readonly green: number
  readonly step: number
  readonly start: Expression
  readonly length: Expression
  readonly end: Expression
  readonly choices: readonly Choice[]
  readonly people: readonly { readonly person: number; readonly works: Literal }[]
}

/** The variables of a green as a whole: in which dry stretch it is opened and finished, minutes in work, and whether it is the first (null where it can't be, or is alone). */
export type GreenVars = {
  readonly green: number
  readonly windows: readonly { readonly window: Span; readonly chosen: Literal }[]
  readonly inWork: Expression
  readonly first: Literal | null
}

/** The start of a person's break. */
export type BreakVars = {
  readonly person: number
  readonly window: Span
  readonly minutes: number
  readonly start: Expression
}

/** A model of a week with its variables, and how to read a schedule from what the engine found. */
export type WeekModel = {
  readonly model: Model
  readonly steps: readonly StepVars[]
  readonly greens: readonly GreenVars[]
  readonly breaks: readonly BreakVars[]
  readonly finish: Expression
  readonly scheduleOf: (solver: Solver) => Schedule
}

/** Everything while a model is written. */
type Writing = {
  readonly engine: Engine
  readonly model: Model
  readonly problem: Problem
  readonly wanted: ModelFor
  readonly byMachine: Interval[][]
  readonly byPerson: Interval[][]
}

const flat = (spans: readonly Span[]): number[] => spans.flatMap(({ start, end }) => [start, end])

/** Starts that leave a stretch of so many minutes inside one of the spans. */
const startsIn = (spans: readonly Span[], minutes: number): Span[] =>
  spans.flatMap(({ start, end }) => (end - start >= minutes ? [{ start, end: end - minutes }] : []))

const startsFor = ({ problem }: Writing, green: number, step: number, machine: number): readonly Span[] => {
  const wanted = problem.greens[green]?.steps[step]
  const one = problem.machines[machine]
  if (wanted === undefined || one === undefined) return []
  const manned = mergeSpans(
    problem.people.filter(({ skills }) => skills.has(wanted.operation)).flatMap(({ shifts }) => shifts),
  )
  const there = intersectSpans(problem.workable.get(wanted.operation) ?? [], mergeSpans(one.available))
  const free = subtractSpans(intersectSpans(there, manned), mergeSpans(mornings(problem, machine, wanted)))
  return startsIn(free, wanted.minutesByMachine.get(one.id) ?? 0)
}

/** One step: its start, its machine, its people. */
const writeStep = (writing: Writing, green: number, step: number): StepVars => {
  const { engine, model, problem } = writing
  const one = problem.greens[green]
  const wanted = one?.steps[step]
  if (one === undefined || wanted === undefined) throw new Error('no such step')
  const name = `g${green} s${step}`
  const options = problem.machines.flatMap((machine, index) => {
    const minutes = wanted.minutesByMachine.get(machine.id)
    return minutes === undefined
      ? []
      : [{ machine: index, minutes, starts: startsFor(writing, green, step, index) }]
  })
  const all = mergeSpans(
    options.flatMap(({ starts }) => starts.map(({ start, end }) => ({ start, end: end + 1 }))),
  )
  const start = model.newIntVarFromDomain(
    engine.Domain.fromIntervals(all.map((span) => [span.start, span.end - 1])),
    `${name} start`,
  )
  const lengths = options.map(({ minutes }) => minutes)
  const length = model.newIntVar(Math.min(...lengths), Math.max(...lengths), `${name} length`)
  const choices = options.map(({ machine, minutes, starts }): Choice => {
    const chosen = model.newBoolVar(`${name} m${machine}`)
    model.addLinearConstraint(start, 0, problem.horizonMin, flat(starts)).onlyEnforceIf(chosen)
    model.addLinearConstraint(length, minutes, minutes).onlyEnforceIf(chosen)
    const lead = leastLeadMin(problem, one, step, machine)
    writing.byMachine[machine]?.push(
      model.newOptionalFixedSizeIntervalVar(
        start.plus(-lead),
        minutes + lead,
        chosen,
        `${name} on ${machine}`,
      ),
    )
    return { machine, minutes, chosen }
  })
  model.addExactlyOne(choices.map(({ chosen }) => chosen))
  // The engine takes sums of one variable only as the end of an interval.
  const end = model.newIntVar(0, problem.horizonMin, `${name} end`)
  model.addLinearConstraint(end.plus(start.times(-1)).plus(length.times(-1)), 0, 0)
  const people = problem.people.flatMap((person, index) => {
    if (!person.skills.has(wanted.operation)) return []
    const works = model.newBoolVar(`${name} p${index}`)
    writing.byPerson[index]?.push(
      model.newOptionalIntervalVar(start, length, end, works, `${name} by ${index}`),
    )
    return [{ person: index, works }]
  })
  // As many people as the chosen machine takes.
  let missing: Expression | null = null
  for (const { works } of people) missing = missing === null ? works : missing.plus(works)
  for (const { machine, chosen } of choices)
    missing = (missing ?? chosen.times(0)).plus(chosen.times(-(problem.machines[machine]?.crew ?? 1)))
  if (missing !== null) model.addLinearConstraint(missing, 0, 0)
  return { green, step, start, length, end, choices, people }
}

/** Least minutes that sand lies before it is dry, whenever it is laid. */
const leastDryMin = ({ driedMm, horizonMin, workable }: Problem, needMm: number): number => {
  const goneAt = (minute: number): number => {
    const hour = Math.min(minute / 60, driedMm.length - 1)
    const [low, high] = [driedMm[Math.floor(hour)] ?? 0, driedMm[Math.ceil(hour)] ?? 0]
    return low + (high - low) * (hour - Math.floor(hour))
  }
  let least = horizonMin
  for (const { start, end } of workable.get('dress') ?? [])
    for (let from = start, to = start; from <= end; from++) {
      to = Math.max(to, from)
      while (to < horizonMin && goneAt(to) - goneAt(from) < needMm - 1e-6) to++
      if (to < horizonMin) least = Math.min(least, to - from)
    }
  return least
}

const writeChain = (
  { model, problem }: Writing,
  steps: readonly StepVars[],
  dryMin: (needMm: number) => number,
): void => {
  let dressed: StepVars | null = null
  for (const [index, one] of steps.entries()) {
    const before = steps[index - 1]
    const green = problem.greens[one.green]
    const wanted = green?.steps[one.step]
    const most = 10 * problem.horizonMin
    if (before !== undefined && green !== undefined) {
      const lag = Math.max(wanted?.lagMin ?? 0, refillMin(problem, green, one.step))
      model.addLinearConstraint(one.start.plus(before.end.times(-1)), lag, most)
    }
    const needMm = wanted?.dryNeedMm ?? 0
    if (needMm > 0 && dressed !== null)
      model.addLinearConstraint(one.start.plus(dressed.end.times(-1)), dryMin(needMm), most)
    if (wanted?.operation === 'dress') dressed = one
  }
}

/** A green while a model is written: its step that opens, and the span in which it is in work. */
type Work = Omit<GreenVars, 'first'> & { readonly opens: StepVars; readonly span: Interval }

/** A green is opened and finished in one dry stretch of a day. */
const writeWindows = (writing: Writing, steps: readonly StepVars[]): Work => {
  const { model, problem, wanted } = writing
  const index = steps[0]?.green ?? 0
  const green = problem.greens[index]
  if (green === undefined) throw new Error('no such green')
  const marks = chainMarks(green)
  const opens = steps[marks.open]
  const last = steps[problem.settings.mayStandDryNight && !wanted.oneDay ? marks.clear : marks.finish]
  const finishes = steps[marks.finish]
  if (opens === undefined || last === undefined || finishes === undefined) throw new Error('no such step')
  const barred = wanted.keepFixtures ? mergeSpans(green.fixtures) : []
  const windows = problem.days
    .flatMap((day) => subtractSpans([{ start: day.startMin, end: day.darkMin }], problem.rain))
    .flatMap((window) => subtractSpans([window], barred))
  const choices = windows.map((window, w) => {
    const chosen = model.newBoolVar(`g${index} w${w}`)
    model.addLinearConstraint(opens.start, window.start, window.end).onlyEnforceIf(chosen)
    model.addLinearConstraint(last.end, window.start, window.end).onlyEnforceIf(chosen)
    return { window, chosen }
  })
  model.addExactlyOne(choices.map(({ chosen }) => chosen))
  const inWork = model.newIntVar(0, problem.horizonMin, `g${index} in work`)
  model.addLinearConstraint(finishes.end.plus(opens.start.times(-1)).plus(inWork.times(-1)), 0, 0)
  const span = model.newIntervalVar(opens.start, inWork, finishes.end, `g${index}`)
  return { green: index, windows: choices, inWork, opens, span }
}

/** Which green may be the first, by green. */
const writeFirst = (
  { model, problem }: Writing,
  openings: readonly StepVars[],
): ReadonlyMap<number, Literal> => {
  if (openings.length < 2) return new Map()
  const weak = (one: StepVars): boolean => problem.greens[one.green]?.weak === true
  const may = openings.some((one) => !weak(one)) ? openings.filter((one) => !weak(one)) : openings
  const firsts = may.map((one) => {
    const first = model.newBoolVar(`g${one.green} first`)
    for (const other of openings)
      if (other !== one)
        model
          .addLinearConstraint(
            other.start.plus(one.end.times(-1)),
            problem.settings.firstGreenCheckMin,
            10 * problem.horizonMin,
          )
          .onlyEnforceIf(first)
    return [one.green, first] as const
  })
  model.addExactlyOne(firsts.map(([, first]) => first))
  return new Map(firsts)
}

/** Sand in kilograms: never more dressed than has come. */
const writeSand = ({ model, problem }: Writing, steps: readonly StepVars[]): void => {
  for (const kind of ['damp', 'kilnDried'] as const) {
    const draws = steps.flatMap((one) => {
      const green = problem.greens[one.green]
      const massT = green?.sand.kind === kind ? (green.steps[one.step]?.sandT ?? 0) : 0
      return massT > 0 ? [{ at: one.start, kg: -Math.floor(massT * 1000) }] : []
    })
    const stores = problem.stores.filter((store) => store.kind === kind)
    const deliveries = stores.flatMap((store) => store.deliveries)
    const stockKg = Math.ceil(stores.reduce((sum, { stockT }) => sum + stockT, 0) * 1000)
    if (stockKg >= -draws.reduce((sum, { kg }) => sum + kg, 0)) continue
    const come = deliveries.map(({ atMin, massT }) => ({
      at: model.newIntVar(atMin, atMin, 'delivery'),
      kg: Math.ceil(massT * 1000),
    }))
    const changes = [...come, ...draws]
    model.addReservoirConstraint(
      changes.map(({ at }) => at),
      changes.map(({ kg }) => kg),
      -stockKg,
      1e9,
    )
  }
}

const writePeople = ({ model, problem, byPerson }: Writing): readonly BreakVars[] => {
  const all = [{ start: 0, end: problem.horizonMin }]
  return problem.people.flatMap((person, index) => {
    const tasks = byPerson[index] ?? []
    const away = subtractSpans(all, mergeSpans(person.shifts)).map(({ start, end }) =>
      model.newFixedSizeIntervalVar(start, end - start, `p${index} away`),
    )
    const name = `p${index} break`
    const breaks = person.breaks.map(({ window, minutes }): BreakVars => {
      const start = model.newIntVar(window.start, Math.max(window.start, window.end - minutes), name)
      return { person: index, window, minutes, start }
    })
    const free = breaks.map(({ start, minutes }) => model.newFixedSizeIntervalVar(start, minutes, name))
    model.addNoOverlap([...tasks, ...away])
    if (free.length > 0) model.addNoOverlap([...tasks, ...free])
    return breaks
  })
}

const tasksOf = (solver: Solver, { problem }: Writing, one: StepVars): readonly ScheduledTask[] => {
  const wanted = problem.greens[one.green]?.steps[one.step]
  const machine = one.choices.find(({ chosen }) => solver.value(chosen) === 1)
  if (wanted === undefined || machine === undefined) return []
  const startMin = solver.value(one.start)
  const people = one.people.filter(({ works }) => solver.value(works) === 1).map(({ person }) => person)
  const shared = { green: one.green, load: wanted.load, machine: machine.machine, startMin }
  const task = {
    ...shared,
    kind: wanted.operation,
    pass: wanted.pass,
    people,
    finishMin: startMin + machine.minutes,
  }
  return wanted.load === null || problem.machines[machine.machine]?.hopperT === null
    ? [task]
    : [{ ...shared, kind: 'load', pass: null, people: people.slice(0, 1), finishMin: startMin }, task]
}

/**
 * A week as a model of optional intervals: a start for each step, a machine and people for it, calendars as domains, shifts and breaks as blocks, one dry stretch for
 * each green, the cap, the first green and the sand. Of a bare week it says all that the checker asks; of any other it is a relaxation: ways only as far
 * as they are certain and without the people who drive, drying at its quickest, sand taken at the dressing.
 */
export const weekModel = (engine: Engine, problem: Problem, wanted: ModelFor): WeekModel => {
  const model = new engine.CpModel()
  const writing: Writing = {
    engine,
    model,
    problem,
    wanted,
    byMachine: problem.machines.map(() => []),
    byPerson: problem.people.map(() => []),
  }
  const known = new Map<number, number>()
  const dryMin = (needMm: number): number => {
    const least = known.get(needMm) ?? leastDryMin(problem, needMm)
    known.set(needMm, least)
    return least
  }
  const chains = wanted.greens.map((green) =>
    (problem.greens[green]?.steps ?? []).map((_, step) => writeStep(writing, green, step)),
  )
  for (const steps of chains) writeChain(writing, steps, dryMin)
  const works = chains.map((steps) => writeWindows(writing, steps))
  model.addCumulative(
    works.map(({ span }) => span),
    works.map(() => 1),
    problem.settings.openGreensCap,
  )
  const firsts = writeFirst(
    writing,
    works.map(({ opens }) => opens),
  )
  const steps = chains.flat()
  writeSand(writing, steps)
  for (const tasks of writing.byMachine) if (tasks.length > 1) model.addNoOverlap(tasks)
  const breaks = writePeople(writing)
  const finish = model.newIntVar(0, problem.horizonMin, 'finish')
  for (const steps of chains) {
    const last = steps.at(-1)
    if (last !== undefined) model.addLinearConstraint(finish.plus(last.end.times(-1)), 0, problem.horizonMin)
  }
  model.minimize(finish)
  return {
    model,
    steps,
    greens: works.map(({ green, windows, inWork }) => ({
      green,
      windows,
      inWork,
      first: firsts.get(green) ?? null,
    })),
    breaks,
    finish,
    scheduleOf: (solver) => ({
      tasks: steps
        .flatMap((one) => tasksOf(solver, writing, one))
        .toSorted((a, b) => a.startMin - b.startMin || a.finishMin - b.finishMin),
      unplanned: problem.greens.flatMap((_, green) =>
        wanted.greens.includes(green) ? [] : [{ green, reason: 'noTimeLeft' as const, facts: {} }],
      ),
    }),
  }
}
