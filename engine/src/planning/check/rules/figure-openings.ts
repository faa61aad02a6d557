import type { Plan } from '../../plan.ts'
import { greenId, type Facts } from '../facts.ts'
import type { Finding } from '../finding.ts'
import type { WorkState } from '../work-state.ts'
import { momentOffMin, wrongFigure } from './figure-finding.ts'

const judgeRow = (facts: Facts, state: WorkState, row: Plan['openings'][number]): readonly Finding[] => {
  const moments = [
    [row.opened, state.openedMin],
    [row.cleared, state.clearedMin],
    [row.dressed, state.dressedMin],
    [row.finished, state.finishedMin],
  ] as const
  return moments.flatMap(([stated, trueMin]) => {
    const by = momentOffMin(facts, stated, trueMin)
    return by > 0 ? [wrongFigure(by, { green: row.green, atMin: trueMin, tasks: state.tasks })] : []
  })
}

/** Rule 23: `openings` has one row for every green that is opened, with the moments that the tasks give. */
export const openingsWrong = (facts: Facts, openings: Plan['openings']): readonly Finding[] => {
  const opened = facts.states.filter(({ openedMin }) => openedMin !== null)
  const ids = new Set(opened.map(({ green }) => greenId(facts, green)))
  const strange = openings
    .filter(({ green }) => !ids.has(green))
    .map(({ green }) => wrongFigure(1, { green }))
  const known = opened.flatMap((state) => {
    const green = greenId(facts, state.green)
    const rows = openings.filter((row) => row.green === green)
    if (rows.length !== 1) return [wrongFigure(Math.abs(rows.length - 1), { green, tasks: state.tasks })]
    return rows.flatMap((row) => judgeRow(facts, state, row))
  })
  return [...strange, ...known]
}
