import { NEVER } from '../../spans.ts'
import type { Facts, TaskFact } from '../facts.ts'
import { SLACK_T } from '../spans.ts'

type Kind = 'damp' | 'kilnDried'

/** Sand of a kind that greens can still get, whatever is done from now on. */
export type SandLeft = {
  /** Tonnes that can have been fetched by a minute, with all that lies in dressers at now. */
  readonly byMin: (kind: Kind, minute: number) => number
  /** First minute, now or later, by which so many tonnes can be had; NEVER where that is never. */
  readonly from: (kind: Kind, massT: number) => number
}

/** Tonnes that a load took, and of which kind. */
const loadOf = (
  { problem }: Facts,
  { served }: TaskFact,
): { readonly kind: Kind; readonly massT: number } => {
  const green = served === null ? undefined : problem.greens[served.green]
  return {
    kind: green?.sand.kind ?? 'damp',
    massT: (served === null ? undefined : green?.steps[served.step])?.sandT ?? 0,
  }
}

/** Tonnes that loads begun before now took and that were spread by then. */
const spentT = (facts: Facts, kind: Kind, nowMin: number): number =>
  facts.byMachine.reduce((sum, all) => {
    const begun = all.filter(({ startMin }) => startMin < nowMin)
    const lastDress = begun.findLastIndex((task) => task.kind === 'dress')
    return begun.slice(0, lastDress + 1).reduce((more, task) => {
      const load = task.kind === 'load' ? loadOf(facts, task) : null
      return load?.kind === kind ? more + load.massT : more
    }, sum)
  }, 0)

/**
 * What sand is left: every dress takes a load of its own, so what is spread from now on is no more than what lay in the bays and came by then, less what had been spread before
 * now. Nothing else is asked, so no plan can spread more.
 */
export const sandLeft = (facts: Facts, nowMin: number): SandLeft => {
  const { stores } = facts.problem
  const spent = { damp: spentT(facts, 'damp', nowMin), kilnDried: spentT(facts, 'kilnDried', nowMin) }
  const byMin = (kind: Kind, minute: number): number =>
    stores
      .filter((store) => store.kind === kind)
      .reduce(
        (sum, store) =>
          store.deliveries.reduce(
            (more, { atMin, massT }) => (atMin <= minute ? more + massT : more),
            sum + store.stockT,
          ),
        -spent[kind],
      )
  const moments = (kind: Kind): readonly number[] =>
    stores
      .flatMap((store) => (store.kind === kind ? store.deliveries.map(({ atMin }) => atMin) : []))
      .filter((minute) => minute > nowMin)
      .sort((a, b) => a - b)
  const from = (kind: Kind, massT: number): number =>
    [nowMin, ...moments(kind)].find((minute) => byMin(kind, minute) + SLACK_T >= massT) ?? NEVER
  return { byMin, from }
}
