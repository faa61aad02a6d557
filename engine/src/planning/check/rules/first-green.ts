import { greenId, type Facts } from '../facts.ts'
import type { Finding, RuleCheck } from '../finding.ts'
import { SLACK_MIN } from '../spans.ts'

type Opening = {
  readonly green: number
  readonly weak: boolean
  readonly atMin: number
  readonly task: string
}

/** Planned greens in the order of opening; of those opened at one minute, one that is not weak comes first. */
const openingsOf = ({ states, problem }: Facts): readonly Opening[] =>
  states
    .flatMap(({ green, openedMin, tasks }) => {
      const task = tasks[0]
      if (openedMin === null || task === undefined) return []
      return [{ green, weak: problem.greens[green]?.weak === true, atMin: openedMin, task }]
    })
    .sort((a, b) => a.atMin - b.atMin || Number(a.weak) - Number(b.weak) || a.green - b.green)

/**
 * Rule 21, `firstGreenUnchecked`: the first green opened is not weak if any other planned green is not, and no other is opened before the
 * first one's opening step has finished and been checked. Counts minutes too early.
 */
export const firstGreenUnchecked: RuleCheck = (facts) => {
  const openings = openingsOf(facts)
  const [first, ...later] = openings
  if (first === undefined) return []
  const found = (one: Opening, by: number, tasks: readonly string[]): Finding => ({
    rule: 'firstGreenUnchecked',
    green: greenId(facts, one.green),
    atMin: one.atMin,
    by,
    tasks,
  })
  const easy = openings.find(({ weak }) => !weak)
  const weakFirst =
    first.weak && easy !== undefined ? [found(first, easy.atMin - first.atMin, [first.task, easy.task])] : []
  const openedBy = facts.timed.find(({ id }) => id === first.task)
  const checkedMin = (openedBy?.finishMin ?? first.atMin) + facts.problem.settings.firstGreenCheckMin
  const early = later
    .filter(({ atMin }) => checkedMin - atMin > SLACK_MIN)
    .map((one) => found(one, checkedMin - one.atMin, [first.task, one.task]))
  return [...weakFirst, ...early]
}
