import type { Objective, Plan } from '../../plan.ts'
import type { Facts } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { sharedMin, SLACK_MIN } from '../spans.ts'
import { momentOffMin, wrongFigure } from './figure-finding.ts'

const inWorkSpans = ({ states }: Facts) =>
  states.flatMap(({ green, openedMin, inWorkUntilMin }) =>
    openedMin === null ? [] : [{ green, start: openedMin, end: inWorkUntilMin }],
  )

/** Greens of the course, excluded ones too, that the tasks do not finish. */
const unfinishedGreens = ({ states, compiled }: Facts): number =>
  compiled.greenIds.length - states.filter(({ finishedMin }) => finishedMin !== null).length

/** Pairs of a green and a fixture that share time while the green is in work. */
const fixtureClashes = (facts: Facts): number =>
  inWorkSpans(facts)
    .map(
      (span) =>
        facts.problem.greens[span.green]?.fixtures.filter((fixture) => sharedMin(fixture, span) > 0).length,
    )
    .reduce<number>((sum, count) => sum + (count ?? 0), 0)

/** Pairs of a green and a date on which it is in work. */
const shutGreenDays = (facts: Facts): number =>
  inWorkSpans(facts)
    .map(
      (span) =>
        facts.problem.days.filter(
          ({ startMin, endMin }) => sharedMin({ start: startMin, end: endMin }, span) > 0,
        ).length,
    )
    .reduce((sum, count) => sum + count, 0)

/** For each person and shift: from the end of ordinary time to the last finish. */
const overtimeMin = ({ byPerson, problem }: Facts): number =>
  byPerson
    .flatMap((tasks, person) => {
      const shifts = problem.people[person]?.shifts ?? []
      return shifts.map((shift, index) => {
        const finishes = tasks
          .filter(({ startMin }) => startMin >= shift.start && startMin < shift.end)
          .map(({ finishMin }) => finishMin)
        const ordinaryEnd = problem.people[person]?.ordinaryEndMin[index] ?? shift.end
        return Math.max(0, Math.max(-Infinity, ...finishes) - ordinaryEnd)
      })
    })
    .reduce((sum, minutes) => sum + minutes, 0)

const travelMin = ({ timed }: Facts): number =>
  timed
    .filter(({ kind }) => kind === 'move')
    .reduce((sum, { startMin, finishMin }) => sum + finishMin - startMin, 0)

/** The last finish of any task; null where there is none. */
const lastFinishMin = ({ timed }: Facts): number | null =>
  timed.length === 0 ? null : Math.max(...timed.map(({ finishMin }) => finishMin))

/** Rule 23: the parts of `objective` are what the tasks give. Counts in each part's own unit. */
export const objectiveWrong = (facts: Facts, objective: Objective): readonly Finding[] => {
  const counted = [
    Math.abs(objective.unfinishedGreens - unfinishedGreens(facts)),
    Math.abs(objective.fixtureClashes - fixtureClashes(facts)),
    Math.abs(objective.shutGreenDays - shutGreenDays(facts)),
    Math.abs(objective.overtimeMin - overtimeMin(facts)),
    Math.abs(objective.travelMin - travelMin(facts)),
  ].map((by) => wrongFigure(by))
  const finishMin = lastFinishMin(facts)
  const finish = wrongFigure(momentOffMin(facts, objective.finish, finishMin), { atMin: finishMin })
  return [...counted, finish].filter(({ by }) => by > SLACK_MIN)
}

/** Rule 23: `feasible` says whether any other rule is broken. Counts the broken ones; 1 where there is none and the plan says there is. */
export const feasibleWrong = (feasible: Plan['feasible'], broken: number): readonly Finding[] =>
  feasible === (broken === 0) ? [] : [wrongFigure(Math.max(1, broken))]
