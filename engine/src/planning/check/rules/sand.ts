import type { ProblemStore } from '../../problem.ts'
import type { Facts, TaskFact } from '../facts.ts'
import { stepOf } from '../facts.ts'
import { findingOf, type Finding, type RuleCheck } from '../finding.ts'
import { SLACK_T } from '../spans.ts'

type Kind = ProblemStore['kind']

/** What a load takes from the bay: kind and dry tonnes; nothing where it is for no step. */
const takenBy = (facts: Facts, task: TaskFact): { readonly kind: Kind; readonly massT: number } | null => {
  const green = task.served === null ? undefined : facts.problem.greens[task.served.green]
  const step = task.served === null ? undefined : green?.steps[task.served.step]
  return green === undefined || step === undefined ? null : { kind: green.sand.kind, massT: step.sandT }
}

const short = (rule: 'noRefill' | 'hopperOverfull', task: TaskFact, massT: number): readonly Finding[] =>
  massT > SLACK_T ? [findingOf(rule, task, massT)] : []

/** One dresser through its tasks: what lies in the hopper, by kind, since it last dressed. */
const followHopper = (facts: Facts, tasks: readonly TaskFact[], hopperT: number): readonly Finding[] => {
  const hopper = new Map<Kind, number>()
  return tasks.flatMap((task) => {
    if (task.kind === 'load') {
      const taken = takenBy(facts, task)
      if (taken !== null) hopper.set(taken.kind, (hopper.get(taken.kind) ?? 0) + taken.massT)
      return short('hopperOverfull', task, [...hopper.values()].reduce((sum, t) => sum + t, 0) - hopperT)
    }
    if (task.kind !== 'dress') return []
    const kind = task.green === null ? undefined : facts.problem.greens[task.green]?.sand.kind
    const haveT = kind === undefined ? 0 : (hopper.get(kind) ?? 0)
    hopper.clear()
    return short('noRefill', task, (stepOf(facts, task)?.sandT ?? 0) - haveT)
  })
}

/** Rule 9, `noRefill` and `hopperOverfull`: each dress has its sand from a load since the last, and a load fits the hopper. Counts tonnes. A machine without a hopper is a matter of `wrongMachine`. */
export const hopper: RuleCheck = (facts) =>
  facts.byMachine.flatMap((tasks, index) => {
    const hopperT = facts.problem.machines[index]?.hopperT ?? null
    return hopperT === null ? [] : followHopper(facts, tasks, hopperT)
  })

const deliveredBy = (stores: readonly ProblemStore[], kind: Kind, min: number): number =>
  stores
    .filter((store) => store.kind === kind)
    .flatMap(({ stockT, deliveries }) => [
      stockT,
      ...deliveries.filter(({ atMin }) => atMin <= min).map(({ massT }) => massT),
    ])
    .reduce((sum, massT) => sum + massT, 0)

/** Rule 10, `stockGone`: sand loaded by any moment is no more than was there by then, per kind. Counts the tonnes missing at each load. */
export const stockGone: RuleCheck = (facts) => {
  const loaded = new Map<Kind, number>()
  return facts.timed.flatMap((task) => {
    const taken = task.kind === 'load' ? takenBy(facts, task) : null
    if (taken === null) return []
    const total = (loaded.get(taken.kind) ?? 0) + taken.massT
    loaded.set(taken.kind, total)
    const by = total - deliveredBy(facts.problem.stores, taken.kind, task.startMin)
    return by > SLACK_T ? [findingOf('stockGone', task, by)] : []
  })
}
