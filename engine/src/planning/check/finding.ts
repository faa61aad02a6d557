import type { Rule } from '../rules.ts'
import type { Facts, TaskFact } from './facts.ts'

/** A broken rule before its minute is written as an instant. `docs/planning.md`, reading 14, says what `by` counts. */
export type Finding = {
  readonly rule: Rule
  readonly green: string | null
  readonly atMin: number | null
  readonly by: number
  readonly tasks: readonly string[]
  /** Whether it is the price of a pin (`as-pinned.ts`). */
  readonly asPinned?: true
}

/** One rule, or a small family: all that the facts break of it, in any order. */
export type RuleCheck = (facts: Facts) => readonly Finding[]

/** A finding about one task, at its start. */
export const findingOf = (rule: Rule, task: TaskFact, by: number): Finding => ({
  rule,
  green: task.greenName,
  atMin: task.timed ? task.startMin : null,
  by,
  tasks: [task.id],
})
