import { chainMarks } from '../chain.ts'
import type { Problem, Schedule } from '../problem.ts'
import { subtractSpans } from '../spans.ts'
import { leftOver, type Draw, type Stock } from '../stock.ts'
import type { Situation } from './situation.ts'

type Why = Schedule['unplanned'][number]

/** What a green would take of a stock of which the greens planned leave too little; null where there is enough of all. */
const shortOf = (problem: Problem, index: number, draws: readonly Draw[]): Why | null => {
  const green = problem.greens[index]
  const needs = new Map<Stock, number>()
  for (const step of green?.steps ?? []) {
    const stock = step.tines?.kind ?? green?.sand.kind ?? 'damp'
    needs.set(stock, (needs.get(stock) ?? 0) + (step.tines?.sets ?? step.sandT))
  }
  for (const [stock, need] of needs) {
    const left = leftOver(problem, draws, stock)
    if (need <= left) continue
    const available = Math.max(0, left)
    return typeof stock === 'number'
      ? { green: index, reason: 'tinesShort', facts: { needSets: need, availableSets: available } }
      : { green: index, reason: 'sandShort', facts: { needT: need, availableT: available } }
  }
  return null
}

/** Why a green found no place any more, with the figures. */
const whyLeftOut = (problem: Problem, index: number, draws: readonly Draw[]): Why => {
  const green = problem.greens[index]
  const nowMin = problem.committed?.nowMin ?? 0
  if (green === undefined) return { green: index, reason: 'noTimeLeft', facts: {} }
  const short = shortOf(problem, index, draws)
  if (short !== null) return short
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

/** Greens left out, with the reason: those that the manager leaves out first. `draws`: what the greens that are planned take from stock. */
export const unplannedOf = (
  { moment, problem }: Situation,
  left: readonly number[],
  draws: readonly Draw[],
): Schedule['unplanned'] => [
  ...[...moment.skipped].map(([green, { why }]) => ({
    green,
    reason: 'skipped' as const,
    facts: why === null ? {} : { why },
  })),
  ...left.map((green) => whyLeftOut(problem, green, draws)),
]
