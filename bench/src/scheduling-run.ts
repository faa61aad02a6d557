import { performance } from 'node:perf_hooks'
import {
  checkProject,
  earliestStarts,
  makespanOf,
  type Project,
  type ProjectFound,
  type ProjectInstance,
  type ProjectSearch,
  type ProjectSet,
} from '@swardwright/engine'
import { rounded } from './rounded.ts'

/** What a run over a set gives; the names are the printed ones. */
export type SchedulingResult = {
  readonly set: string
  /** Schedules allowed for each instance. */
  readonly schedules: number
  readonly solved: number
  readonly infeasibleProven: number
  /** Mean over the solved instances; null when there is none. */
  readonly meanDeviationFromCriticalPathPercent: number | null
  /** Mean over the solved instances that have a best known; null when there is none. */
  readonly meanGapToBestKnownPercent: number | null
  readonly seconds: number
  readonly schedulesPerSecond: number
  /** Instances that the cap on seconds cut short. */
  readonly cappedInstances: number
  readonly makespans: Readonly<Record<string, number | null>>
}

/** How a set is run. */
export type RunOptions = {
  readonly schedules: number
  /** Cap on the whole run; null for none. Each instance may take its even share of what is left. */
  readonly seconds: number | null
  readonly seed: number
  /** The search on trial. */
  readonly solve: (project: Project, search: ProjectSearch) => ProjectFound
  readonly onProgress: (line: string) => void
}

type Solved = { readonly instance: ProjectInstance; readonly found: ProjectFound; readonly isCapped: boolean }

/** Length of a project when only its lags count; null when they contradict each other. */
const criticalPath = (project: Project): number | null => {
  const earliest = earliestStarts(project)
  return earliest === null ? null : makespanOf(project, earliest)
}

const meanPercentOver = (
  pairs: readonly (readonly [value: number, base: number | null])[],
): number | null => {
  const over = pairs.flatMap(([value, base]) =>
    base === null || base <= 0 ? [] : [(100 * (value - base)) / base],
  )
  return over.length === 0 ? null : rounded(over.reduce((sum, part) => sum + part, 0) / over.length, 4)
}

/** Why a found schedule cannot stand; null when it can. The length is measured by the checker, never taken from the search. */
const complaint = ({ instance: { name, project }, found: { starts, makespan } }: Solved): string | null => {
  if (starts === null) return null
  const [fault] = checkProject(project, starts)
  if (fault !== undefined) return `${name}: the schedule does not stand: ${JSON.stringify(fault)}`
  const checked = makespanOf(project, starts)
  return checked === makespan ? null : `${name}: the search tells ${makespan}, its schedule takes ${checked}`
}

/** Milliseconds that one instance may take, so that all that remain get as much; null without a cap. */
const shareMs = (options: RunOptions, startedMs: number, remaining: number): number | null =>
  options.seconds === null
    ? null
    : Math.max(0, options.seconds * 1000 - (performance.now() - startedMs)) / remaining

const solveOne = (instance: ProjectInstance, options: RunOptions, capMs: number | null): Solved => {
  const { schedules, seed, solve } = options
  if (capMs === null)
    return { instance, found: solve(instance.project, { schedules, seed }), isCapped: false }
  const untilMs = performance.now() + capMs
  let isCapped = false
  const stop = (): boolean => {
    isCapped = performance.now() >= untilMs
    return isCapped
  }
  const found = solve(instance.project, { schedules, seed, stop })
  return { instance, found, isCapped }
}

/** Runs all instances of a set one after another; the first schedule that fails its check ends the run with what is wrong. */
export const runSet = (
  { set, instances }: ProjectSet,
  options: RunOptions,
):
  | { readonly ok: true; readonly value: SchedulingResult }
  | { readonly ok: false; readonly error: string } => {
  const startedMs = performance.now()
  const all: Solved[] = []
  for (const [at, instance] of instances.entries()) {
    const solved = solveOne(instance, options, shareMs(options, startedMs, instances.length - at))
    const error = complaint(solved)
    if (error !== null) return { ok: false, error }
    all.push(solved)
    if ((at + 1) % 20 === 0 || at + 1 === instances.length)
      options.onProgress(
        `${at + 1} of ${instances.length}, ${Math.round((performance.now() - startedMs) / 1000)} s`,
      )
  }
  return { ok: true, value: summed(set, options.schedules, all, (performance.now() - startedMs) / 1000) }
}

const summed = (
  set: string,
  schedules: number,
  all: readonly Solved[],
  seconds: number,
): SchedulingResult => {
  const lengths = all.flatMap(({ instance, found }) =>
    found.starts === null ? [] : [{ instance, makespan: makespanOf(instance.project, found.starts) }],
  )
  const spent = all.reduce((sum, { found }) => sum + found.schedules, 0)
  return {
    set,
    schedules,
    solved: lengths.length,
    infeasibleProven: all.filter(({ found }) => found.infeasibleProven).length,
    meanDeviationFromCriticalPathPercent: meanPercentOver(
      lengths.map(({ instance, makespan }) => [makespan, criticalPath(instance.project)]),
    ),
    meanGapToBestKnownPercent: meanPercentOver(
      lengths.map(({ instance, makespan }) => [makespan, instance.bestKnown]),
    ),
    seconds: rounded(seconds, 3),
    schedulesPerSecond: Math.round(spent / Math.max(seconds, 1e-9)),
    cappedInstances: all.filter(({ isCapped }) => isCapped).length,
    makespans: Object.fromEntries(
      all.map(({ instance, found }) => [
        instance.name,
        found.starts === null ? null : makespanOf(instance.project, found.starts),
      ]),
    ),
  }
}
