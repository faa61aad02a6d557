import type { CompiledProblem } from './compile.ts'
import type { Effect } from '../operations.ts'
import type { ProblemGreen } from '../problem.ts'
import type { ReadTask } from './read-tasks.ts'

/** When a planned green changes its work state. */
export type WorkState = {
  readonly green: number
  /** Null when nothing that was done opens the green; it is then never in work. */
  readonly openedMin: number | null
  /** Finish of the last step with the effect; null when the chain has none or it is missing. */
  readonly clearedMin: number | null
  readonly dressedMin: number | null
  readonly finishedMin: number | null
  /** Until when the rules take the green for uncleared and for in work: the end of the horizon where that never ends. */
  readonly unclearedUntilMin: number
  readonly inWorkUntilMin: number
  /** The tasks that open and finish it, by id, as far as they are there. */
  readonly tasks: readonly string[]
}

type Done = { readonly inChain: boolean; readonly task: ReadTask | undefined }

const timedOnly = (task: ReadTask | undefined): ReadTask | undefined =>
  task?.timed === true ? task : undefined

const lastWith = (green: ProblemGreen, tasks: readonly (ReadTask | undefined)[], effect: Effect): Done => {
  const index = green.steps.findLastIndex(({ effects }) => effects.includes(effect))
  return { inChain: index >= 0, task: index < 0 ? undefined : timedOnly(tasks[index]) }
}

const firstOpening = (
  green: ProblemGreen,
  tasks: readonly (ReadTask | undefined)[],
): ReadTask | undefined => {
  const opening = tasks.filter((_, index) => green.steps[index]?.effects.includes('opens'))
  return opening
    .flatMap((task) => timedOnly(task) ?? [])
    .toSorted((a, b) => a.startMin - b.startMin)
    .at(0)
}

/** The work state of one green of the problem from the tasks that do its steps. */
export const workStateOf = (
  compiled: CompiledProblem,
  green: number,
  tasks: readonly (ReadTask | undefined)[],
): WorkState | null => {
  const chain = compiled.problem.greens[green]
  if (chain === undefined) return null
  const opening = firstOpening(chain, tasks)
  const clears = lastWith(chain, tasks, 'clears')
  const finishing = lastWith(chain, tasks, 'finishes')
  const finisher = finishing.inChain ? finishing.task : timedOnly(tasks.at(-1))
  const finishedMin = finisher?.finishMin ?? null
  const inWorkUntilMin = finishedMin ?? compiled.problem.horizonMin
  const clearedMin = clears.task?.finishMin ?? null
  return {
    green,
    openedMin: opening?.startMin ?? null,
    clearedMin,
    dressedMin: lastWith(chain, tasks, 'dresses').task?.finishMin ?? null,
    finishedMin,
    unclearedUntilMin: Math.min(clearedMin ?? inWorkUntilMin, inWorkUntilMin),
    inWorkUntilMin,
    tasks: [opening, finisher].flatMap((task) => task?.id ?? []),
  }
}
