import { parseInstant } from '../instant.ts'
import type { Facts } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { SLACK_MIN } from '../spans.ts'

/** A figure of the plan that its tasks do not bear out. */
export const wrongFigure = (by: number, where: Partial<Omit<Finding, 'rule' | 'by'>> = {}): Finding => ({
  rule: 'figureWrong',
  green: null,
  atMin: null,
  by,
  tasks: [],
  ...where,
})

/** Minutes between a stated moment and the one that the tasks give; 1 where only one of them is there or it cannot be read; 0 when they agree. */
export const momentOffMin = (facts: Facts, stated: string | null, trueMin: number | null): number => {
  if (stated === null || trueMin === null) return stated === trueMin ? 0 : 1
  const off = Math.abs((parseInstant(stated) - facts.problem.originMs) / 60_000 - trueMin)
  if (Number.isNaN(off)) return 1
  return off > SLACK_MIN ? off : 0
}
