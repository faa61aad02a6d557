import type { ChainMarks } from '../chain.ts'
import type { Problem } from '../problem.ts'
import { NEVER, subtractSpans } from '../spans.ts'
import type { Loyalty } from './crew.ts'
import { copyField, type Field } from './field.ts'
import { coursesOf, limitsOf, type GreenCourse } from './judge-field.ts'
import { layJob } from './lay.ts'
import type { OldSteps } from './wishes.ts'

/** A green that is laid whole, wherever it goes. */
export type Whole = {
  readonly green: number
  readonly old: OldSteps
  readonly loyalty: Loyalty
  /** Opened no earlier; on this day only, where one is named. */
  readonly from: number
  readonly day: number | null
  /** Whether a fixture that names the green keeps it out of work. */
  readonly keepFixtures: boolean
}

/** Minute to open at instead, 0 where the green may be opened as it is: a fixture in the way, or too many greens in work. */
const postponed = (
  problem: Problem,
  own: GreenCourse,
  others: readonly GreenCourse[],
  keepFixtures: boolean,
): number => {
  const clash = keepFixtures
    ? problem.greens[own.green]?.fixtures.find((one) => one.start < own.finished && one.end > own.opened)
    : undefined
  if (clash !== undefined) return Math.max(clash.end, own.opened + 1)
  const inWork = others.filter((one) => one.opened < own.finished && one.finished > own.opened)
  const moments = [own.opened, ...inWork.map((one) => Math.max(one.opened, own.opened))]
  const most = Math.max(
    ...moments.map((at) => inWork.filter((one) => one.opened <= at && one.finished > at).length + 1),
  )
  return most > problem.settings.openGreensCap
    ? Math.max(Math.min(...inWork.map((one) => one.finished)), own.opened + 1)
    : 0
}

const tryFrom = (
  field: Field,
  whole: Whole,
  marks: readonly ChainMarks[],
  from: number,
  windowEnd: number,
): { readonly field: Field; readonly course: GreenCourse } | null => {
  const { problem } = field
  const { green } = whole
  const mark = marks[green]
  if (mark === undefined) return null
  const trial = copyField(field)
  trial.stuck[green] = 0
  const steps = problem.greens[green]?.steps ?? []
  let limits = {
    clear: windowEnd,
    finish: problem.settings.mayStandDryNight ? problem.horizonMin : windowEnd,
  }
  for (let step = trial.done[green] ?? 0; step < steps.length; step++) {
    const wish = whole.old[green]?.[step] ?? null
    const end =
      step < mark.open
        ? windowEnd
        : step <= mark.clear
          ? limits.clear
          : step <= mark.finish
            ? limits.finish
            : problem.horizonMin
    const job = {
      green,
      step,
      key: 0,
      least: 0,
      machine: wish?.machine ?? null,
      people: wish?.people ?? [],
      loyalty: whole.loyalty,
      pinMin: null,
    }
    const laid = layJob(trial, job, step === mark.open ? from : 0, end)
    if (laid === null) return null
    if (step === mark.open) {
      const own = limitsOf(problem, laid.startMin)
      limits = { clear: Math.min(own.clear, windowEnd), finish: own.finish }
    }
  }
  const course = coursesOf(problem, trial.tasks, marks).find((one) => one.green === green)
  return course === undefined ? null : { field: trial, course }
}

/** Dry, light stretches of the days from a minute on. */
const windowsFrom = (problem: Problem, whole: Whole): readonly { start: number; end: number }[] =>
  problem.days.flatMap((day, index) =>
    day.endMin <= whole.from || (whole.day !== null && whole.day !== index)
      ? []
      : subtractSpans([{ start: Math.max(day.startMin, whole.from), end: day.darkMin }], problem.rain),
  )

/**
 * Lays a whole green after all that is laid, in the first dry stretch in which it is finished in time, fixtures and the cap on opened greens kept. Null where there is
 * none; then nothing is changed.
 */
export const placeWhole = (field: Field, whole: Whole, marks: readonly ChainMarks[]): Field | null => {
  const { problem } = field
  const others = coursesOf(problem, field.tasks, marks).filter((one) => one.green !== whole.green)
  const [first] = others
  const checked = first === undefined ? 0 : first.openedOver + problem.settings.firstGreenCheckMin
  for (const window of windowsFrom(problem, whole)) {
    let from = Math.max(window.start, checked)
    while (from < window.end) {
      const tried = tryFrom(field, whole, marks, from, window.end)
      if (tried === null) break
      const later = postponed(problem, tried.course, others, whole.keepFixtures)
      if (later === 0) return tried.field
      if (later >= NEVER) break
      from = later
    }
  }
  return null
}
