import type { Plan } from '../../plan.ts'
import type { ProblemGreen } from '../../problem.ts'
import type { Facts } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { wrongFigure } from './figure-finding.ts'

/** A plan may round its tonnes to the kilogram. */
const ROUNDING_T = 0.001

const offBy = (green: ProblemGreen, row: Plan['sand'][number]): number => {
  const { lowT, likelyT, highT, loads } = green.sand
  const massOffT = Math.max(
    Math.abs(row.lowT - lowT),
    Math.abs(row.likelyT - likelyT),
    Math.abs(row.highT - highT),
  )
  return massOffT > ROUNDING_T ? massOffT : Math.abs(row.loads - loads)
}

/** Rule 23: `sand` has a row for every planned green that takes sand, with the problem's tonnes and loads. Counts tonnes, loads where only those differ, or rows. */
export const sandWrong = (facts: Facts, sand: Plan['sand']): readonly Finding[] => {
  const strange = sand
    .filter(({ green }) => !facts.compiled.greenIndex.has(green))
    .map(({ green }) => wrongFigure(1, { green }))
  const known = facts.problem.greens.flatMap((green, index) => {
    const rows = sand.filter((row) => row.green === green.id)
    const wanted = facts.planned.has(index) && green.sand.loads > 0
    if (rows.length > 1 || (wanted && rows.length === 0)) {
      return [wrongFigure(Math.abs(rows.length - 1), { green: green.id })]
    }
    return rows
      .map((row) => offBy(green, row))
      .filter((by) => by > 0)
      .map((by) => wrongFigure(by, { green: green.id }))
  })
  return [...strange, ...known]
}
