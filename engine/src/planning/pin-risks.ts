import type { Plan } from './plan.ts'
import type { Violation } from './rules.ts'

/** A plan with what the manager's pins break in it, out of all that the checker has found. The bound is left away then: it holds for plans that break no rule. */
export const withPinRisks = (plan: Plan, broken: readonly Violation[]): Plan => {
  const risks = broken.filter(({ asPinned }) => asPinned === true)
  if (risks.length === 0) return plan
  const { bound: _, ...rest } = plan
  return {
    ...rest,
    pinRisks: risks.map(({ rule, green, at, by, tasks }) => ({ rule, green, at, by, tasks: [...tasks] })),
  }
}
