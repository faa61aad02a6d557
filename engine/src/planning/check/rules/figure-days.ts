import type { Plan } from '../../plan.ts'
import type { ProblemDay } from '../../problem.ts'
import { dayOfStart } from '../days.ts'
import type { Facts } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { parseInstant } from '../instant.ts'
import { SLACK_MIN } from '../spans.ts'
import { momentOffMin, wrongFigure } from './figure-finding.ts'

const lastOf = (minutes: readonly number[]): number | null =>
  minutes.length === 0 ? null : Math.max(...minutes)

/** Minutes by which a stated last safe start contradicts the openings of its day: none but where a green is opened, and not before the last. */
const lastSafeStartOffMin = (facts: Facts, stated: string | null, lastOpenedMin: number | null): number => {
  if (stated === null || lastOpenedMin === null) return stated === null && lastOpenedMin === null ? 0 : 1
  const min = (parseInstant(stated) - facts.problem.originMs) / 60_000
  if (Number.isNaN(min)) return 1
  return lastOpenedMin - min > SLACK_MIN ? lastOpenedMin - min : 0
}

const judgeDay = (facts: Facts, day: ProblemDay, index: number, rows: Plan['days']): readonly Finding[] => {
  const ofDay = facts.timed.filter(({ startMin }) => dayOfStart(facts.problem.days, startMin) === index)
  const finishMin = lastOf(ofDay.map((task) => task.finishMin))
  const lastOpenedMin = lastOf(
    facts.states.flatMap(({ openedMin }) =>
      openedMin !== null && dayOfStart(facts.problem.days, openedMin) === index ? [openedMin] : [],
    ),
  )
  const atMin = finishMin ?? day.startMin
  if (rows.length > 1 || (rows.length === 0 && finishMin !== null)) {
    return [wrongFigure(Math.abs(rows.length - 1), { atMin })]
  }
  return rows
    .flatMap((row) => [
      momentOffMin(facts, row.finish, finishMin),
      lastSafeStartOffMin(facts, row.lastSafeStart, lastOpenedMin),
    ])
    .filter((by) => by > 0)
    .map((by) => wrongFigure(by, { atMin }))
}

/** Rule 23: `days` says when the tasks of each date finish, and its last safe start fits the openings. How late that start may be is not judged here. */
export const daysWrong = (facts: Facts, days: Plan['days']): readonly Finding[] => {
  const dates = new Set(facts.problem.days.map(({ date }) => date))
  const strange = days.filter(({ date }) => !dates.has(date)).map(() => wrongFigure(1))
  const known = facts.problem.days.flatMap((day, index) =>
    judgeDay(
      facts,
      day,
      index,
      days.filter(({ date }) => date === day.date),
    ),
  )
  return [...strange, ...known]
}
