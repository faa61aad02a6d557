import { MINUTE_MS } from '../../time/zone.ts'
import { chainMarks } from '../chain.ts'
import { check, isFaultless } from '../check/check.ts'
import type { CompiledProblem } from '../check/compile.ts'
import type { Proofs } from '../check/lost/lost.ts'
import { withPinRisks } from '../pin-risks.ts'
import type { Plan, PlanTask, PlanToCheck } from '../plan.ts'
import type { Schedule, ScheduledTask } from '../problem.ts'
import { instantWriter, scheduleToPlan, type PlanFrame } from '../schedule-to-plan.ts'
import { NEVER } from '../spans.ts'
import { coursesOf, type GreenCourse } from './judge-field.ts'
import { safeStartOn } from './safe-starts.ts'

/** What the new plan takes over from the old one. */
export type OldPlan = Pick<PlanToCheck, 'tasks' | 'days'> & PlanFrame

/** How many of the greens' rows a plan lacks because their chain can't be done to its end: they stand in work to the end of the days planned. */
const openEnds = ({ problem }: CompiledProblem, tasks: readonly ScheduledTask[]): readonly GreenCourse[] =>
  coursesOf(problem, tasks, problem.greens.map(chainMarks)).filter(
    ({ green }) =>
      tasks.filter((task) => task.green === green && task.kind !== 'move' && task.kind !== 'load').length <
      (problem.greens[green]?.steps.length ?? 0),
  )

/** Rows and figures with the greens that are opened and can't be done to their end. */
const withOpenEnds = (compiled: CompiledProblem, plan: Plan, tasks: readonly ScheduledTask[]): Plan => {
  const { problem } = compiled
  const ends = openEnds(compiled, tasks)
  if (ends.length === 0) return plan
  const write = instantWriter(problem)
  const orNull = (minute: number): string | null => (minute >= NEVER ? null : write(minute))
  const has = (green: number, effect: 'clears' | 'dresses'): boolean =>
    problem.greens[green]?.steps.some(({ effects }) => effects.includes(effect)) === true
  const until = ({ finished }: GreenCourse): number => Math.min(finished, problem.horizonMin)
  const rows = ends.map((one) => ({
    green: problem.greens[one.green]?.id ?? '',
    opened: write(one.opened),
    cleared: has(one.green, 'clears') ? orNull(one.cleared) : null,
    dressed: has(one.green, 'dresses') ? orNull(one.dressed) : null,
    finished: orNull(one.finished),
  }))
  const unfinished = ends.filter(({ finished }) => finished >= NEVER).length
  const overlaps = (one: GreenCourse, span: { start: number; end: number }): boolean =>
    span.start < until(one) && span.end > one.opened
  const clashes = ends.reduce(
    (sum, one) =>
      sum + (problem.greens[one.green]?.fixtures.filter((span) => overlaps(one, span)).length ?? 0),
    0,
  )
  const shut = ends.reduce(
    (sum, one) =>
      sum + problem.days.filter((day) => overlaps(one, { start: day.startMin, end: day.endMin })).length,
    0,
  )
  return {
    ...plan,
    openings: [...plan.openings, ...rows].sort((a, b) => Date.parse(a.opened) - Date.parse(b.opened)),
    objective: {
      ...plan.objective,
      unfinishedGreens: plan.objective.unfinishedGreens + unfinished,
      fixtureClashes: plan.objective.fixtureClashes + clashes,
      shutGreenDays: plan.objective.shutGreenDays + shut,
    },
  }
}

/** What tells a task from others, whatever its time: for work its step, for a machine's own tasks also machine and start. */
const idKey = (task: PlanTask): string =>
  task.operation === 'move' || task.operation === 'load' || task.operation === 'setUp'
    ? [task.operation, task.green, task.load, task.machine, task.start].join(' ')
    : [task.operation, task.green, task.pass, task.load].join(' ')

/** The same tasks with the ids that they had in the old plan, so that what was recorded of a task still names it; new ones get numbers that were not used. */
const withOldIds = (tasks: readonly PlanTask[], old: readonly PlanTask[]): PlanTask[] => {
  const byKey = new Map<string, string[]>()
  for (const task of old) byKey.set(idKey(task), [...(byKey.get(idKey(task)) ?? []), task.id])
  const used = new Set(old.map(({ id }) => id))
  let number = tasks.length
  const named = tasks.map((task) => {
    const id = byKey.get(idKey(task))?.shift()
    if (id !== undefined) return { ...task, id }
    do number++
    while (used.has(`t${number}`))
    return { ...task, id: `t${number}` }
  })
  // At one instant the old plan's own order stands, so that a plan in which nothing has changed is the same to the letter.
  const place = new Map(old.map(({ id }, index) => [id, index]))
  const placeOf = ({ id }: PlanTask): number => place.get(id) ?? old.length
  return named.sort(
    (a, b) =>
      Date.parse(a.start) - Date.parse(b.start) ||
      Date.parse(a.finish) - Date.parse(b.finish) ||
      placeOf(a) - placeOf(b),
  )
}

const sameDayWork = (a: readonly ScheduledTask[], b: readonly ScheduledTask[]): boolean =>
  a.length === b.length && JSON.stringify(a) === JSON.stringify(b)

/** A schedule made again as a plan. Last safe starts of days on which nothing has changed are those of the old plan. */
export const planAgain = (
  compiled: CompiledProblem,
  schedule: Schedule,
  feasible: boolean,
  proofs: Proofs,
  old: OldPlan,
  oldTasks: readonly ScheduledTask[],
  isSameSky: boolean,
): Plan => {
  const { problem } = compiled
  const made = withOpenEnds(compiled, scheduleToPlan(problem, schedule, old), schedule.tasks)
  const write = instantWriter(problem)
  const isClean = (tasks: readonly ScheduledTask[]): boolean =>
    isFaultless(compiled, { ...schedule, tasks }, proofs)
  const days = made.days.map((row) => {
    const day = problem.days.findIndex(({ date }) => date === row.date)
    const hours = problem.days[day]
    const ofDay = (tasks: readonly ScheduledTask[]): readonly ScheduledTask[] =>
      tasks.filter(
        ({ startMin }) => hours !== undefined && startMin >= hours.startMin && startMin < hours.endMin,
      )
    const was = old.days?.find(({ date }) => date === row.date)
    const nowMin = problem.committed?.nowMin ?? 0
    const untouched = isSameSky && (hours?.startMin ?? 0) > nowMin
    if (was !== undefined && untouched && sameDayWork(ofDay(schedule.tasks), ofDay(oldTasks)))
      return { ...row, lastSafeStart: was.lastSafeStart }
    const guess = Math.round((Date.parse(was?.lastSafeStart ?? '') - problem.originMs) / MINUTE_MS)
    const minute = safeStartOn(problem, schedule.tasks, day, feasible ? isClean : () => false, guess)
    return { ...row, lastSafeStart: minute === null ? null : write(minute) }
  })
  const again = { ...made, tasks: withOldIds(made.tasks, old.tasks), days, feasible }
  if ((problem.committed?.pins.length ?? 0) === 0) return again
  const risky = withPinRisks(again, check(compiled, again))
  return risky.pinRisks === undefined ? again : { ...risky, feasible: false }
}
