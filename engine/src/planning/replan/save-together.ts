import type { Committed } from '../committed.ts'
import type { Problem, ProblemGreen, ScheduledTask, Span } from '../problem.ts'
import { mergeSpans } from '../spans.ts'
import { solve } from '../solve/solve.ts'
import { copyField, stand, type Field } from './field.ts'
import { coursesOf, limitsOf } from './judge-field.ts'
import { notWorked } from './not-worked.ts'
import { byTime } from './old-plan.ts'
import type { Broken } from './repair.ts'

/** Steps that the search may place, taken back ones too: what a blink allows. */
const MOST_PLACED = 70_000

/** By so much longer the sky is taken to hold, so that the search sees by how much a green is late, minutes. */
const GRACE_MIN = 240

/** Spans that end when the sky does, or soon after, end `GRACE_MIN` after it. */
const withGrace = (spans: readonly Span[], limitMin: number): readonly Span[] => {
  const until = limitMin + GRACE_MIN
  return mergeSpans(
    spans.map((span) =>
      span.end >= limitMin && span.end < until ? { start: Math.min(span.start, until), end: until } : span,
    ),
  )
}

/** What is left of the rain when the sky holds until `GRACE_MIN` after the limit. */
const laterRain = (rain: readonly Span[], limitMin: number): readonly Span[] =>
  rain.flatMap((span) => {
    const until = limitMin + GRACE_MIN
    if (span.end <= limitMin || span.start >= until) return [span]
    return span.end <= until ? [] : [{ start: until, end: span.end }]
  })

/** The problem of finishing some greens alone, as if the sky held for longer: until then as it is in truth. */
const problemOf = (
  { problem, marks }: Broken,
  committed: Committed,
  greens: ReadonlySet<number>,
  limitMin: number,
): Problem => ({
  ...problem,
  rain: laterRain(problem.rain, limitMin),
  days: problem.days.map((day) =>
    day.darkMin >= limitMin
      ? { ...day, darkMin: Math.min(day.endMin, Math.max(day.darkMin, limitMin + GRACE_MIN)) }
      : day,
  ),
  workable: new Map(
    [...problem.workable].map(([operation, spans]) => [operation, withGrace(spans, limitMin)]),
  ),
  machines: problem.machines.map((machine) => ({
    ...machine,
    available: withGrace(machine.available, limitMin),
  })),
  people: problem.people.map((person) => ({
    ...person,
    shifts: person.shifts.map((shift) => withGrace([shift], limitMin)[0] ?? shift),
  })),
  greens: problem.greens.map((green, index) =>
    greens.has(index)
      ? { ...green, fixtures: [], steps: green.steps.slice(0, (marks[index]?.finish ?? -1) + 1) }
      : { ...notWorked(green), fixtures: [] },
  ),
  committed: { ...committed, pins: committed.pins.filter(({ green }) => greens.has(green)) },
})

/** When the sky stops the work, or the last have gone home before that. */
const goneBy = ({ people }: Problem, skyMin: number): number =>
  people
    .flatMap(({ shifts }) => shifts)
    .reduce((last, { start, end }) => (start < skyMin ? Math.max(last, Math.min(end, skyMin)) : last), 0)

/** All that stands, with the tasks that a search has added. */
const laidOn = (stood: Field, committed: Committed, tasks: readonly ScheduledTask[]): Field => {
  const field = copyField(stood)
  const standing = new Set(committed.tasks)
  const added = tasks.filter((task) => !standing.has(task)).sort(byTime)
  added.forEach((task, index) => {
    const next = added.slice(index + 1).find(({ machine }) => machine === task.machine)
    stand(field, task, next)
  })
  return field
}

/**
 * Looks for a way to finish some of the greens in work all in time: the search of the planner itself, with nothing else to do and led by the last finish, for a fixed count of
 * steps. All that stands with that way laid on it; null where none was found.
 */
export const savedTogether = (broken: Broken, greens: ReadonlySet<number>): Field | null => {
  const { problem, marks, stood } = broken
  const { committed } = problem
  if (committed === undefined) return null
  const courses = coursesOf(problem, stood.tasks, marks).filter(({ green }) => greens.has(green))
  const limitMin = goneBy(problem, Math.min(...courses.map(({ opened }) => limitsOf(problem, opened).finish)))
  const alone = problemOf(broken, committed, greens, limitMin)
  const isLeft = (green: ProblemGreen, index: number): boolean =>
    !greens.has(index) && (stood.done[index] ?? 0) < green.steps.length
  const left = problem.excluded.length + problem.greens.filter(isLeft).length
  const steps = alone.greens.reduce((sum, green) => sum + green.steps.length, 0)
  let isSaved = false
  const { schedule, score } = solve(alone, {
    seed: 1,
    schedules: Math.ceil(MOST_PLACED / Math.max(1, steps)),
    onProgress: ({ best }) => {
      isSaved = best.unfinishedGreens === left && best.finishMin <= limitMin
    },
    stop: () => isSaved,
  })
  return score.unfinishedGreens === left && score.finishMin <= limitMin
    ? laidOn(stood, committed, schedule.tasks)
    : null
}
