import { chainMarks } from '../chain.ts'
import type { Problem, Schedule } from '../problem.ts'
import { subtractSpans } from '../spans.ts'
import { supplyT } from './sand.ts'
import type { Situation } from './situation.ts'

type Why = Schedule['unplanned'][number]

/** Why a green found no place any more, with the figures. */
const whyLeftOut = (problem: Problem, index: number): Why => {
  const green = problem.greens[index]
  const nowMin = problem.committed?.nowMin ?? 0
  if (green === undefined) return { green: index, reason: 'noTimeLeft', facts: {} }
  const needT = green.steps.reduce((sum, step) => sum + step.sandT, 0)
  const availableT = supplyT(problem, green.sand.kind, problem.horizonMin)
  if (needT > availableT) return { green: index, reason: 'sandShort', facts: { needT, availableT } }
  const marks = chainMarks(green)
  const needMin = green.steps
    .slice(marks.open, marks.finish + 1)
    .reduce((sum, step) => sum + Math.min(...step.minutesByMachine.values()) + step.lagMin, 0)
  const windows = problem.days.flatMap((day) =>
    day.darkMin <= nowMin
      ? []
      : subtractSpans([{ start: Math.max(day.startMin, nowMin), end: day.darkMin }], problem.rain),
  )
  const longestWindowMin = Math.max(0, ...windows.map(({ start, end }) => end - start))
  return {
    green: index,
    reason: needMin > longestWindowMin ? 'noWindow' : 'noTimeLeft',
    facts: { needMin, longestWindowMin },
  }
}

/** Greens left out, with the reason: those that the manager leaves out first. */
export const unplannedOf = (
  { moment, problem }: Situation,
  left: readonly number[],
): Schedule['unplanned'] => [
  ...[...moment.skipped].map(([green, { why }]) => ({
    green,
    reason: 'skipped' as const,
    facts: why === null ? {} : { why },
  })),
  ...left.map((green) => whyLeftOut(problem, green)),
]
