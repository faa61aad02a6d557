import type { Problem } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { BoundGreen, BoundGround } from './bound-ground.ts'

type Kind = Problem['greens'][number]['sand']['kind']

/** Grams that the checker forgives. */
const SLACK_T = 1e-6

const suppliedAt = ({ stores }: Problem, kind: Kind, minute: number): number =>
  stores
    .filter((store) => store.kind === kind)
    .reduce(
      (sum, { stockT, deliveries }) =>
        deliveries.reduce((more, { atMin, massT }) => more + (atMin <= minute ? massT : 0), sum + stockT),
      0,
    )

/** First minute by which so much sand of a kind has come; NEVER where it never does. */
const suppliedFrom = (problem: Problem, kind: Kind, massT: number): number => {
  const moments = problem.stores
    .filter((store) => store.kind === kind)
    .flatMap(({ deliveries }) => deliveries.map(({ atMin }) => atMin))
    .toSorted((a, b) => a - b)
  return [0, ...moments].find((minute) => suppliedAt(problem, kind, minute) >= massT - SLACK_T) ?? NEVER
}

const sandOf = ({ green }: BoundGreen): number => green.steps.reduce((sum, { sandT }) => sum + sandT, 0)

/** Least minutes from the last dressing of a green to the end of its chain. */
const fromDressingMin = ({ steps }: BoundGreen): number =>
  steps
    .slice(steps.findLastIndex(({ step }) => step.operation === 'dress'))
    .reduce(
      (sum, { choices }) =>
        sum + (choices.length === 0 ? 0 : Math.min(...choices.map(({ minutes }) => minutes))),
      0,
    )

/** When the last sand has come that the greens take of each kind, and what must still be done then: the soonest end of all, with the kind. */
export const sandBound = ({
  problem,
  greens,
}: BoundGround): { readonly kind: Kind; readonly finishMin: number } => {
  const bounds = (['damp', 'kilnDried'] as const).map((kind) => {
    const dressed = greens.filter((green) => green.green.sand.kind === kind && sandOf(green) > 0)
    const needT = dressed.reduce((sum, green) => sum + sandOf(green), 0)
    const from = needT <= 0 ? 0 : suppliedFrom(problem, kind, needT)
    if (from === 0) return { kind, finishMin: 0 }
    return { kind, finishMin: Math.min(NEVER, from + Math.min(...dressed.map(fromDressingMin))) }
  })
  return bounds.reduce((worst, one) => (one.finishMin > worst.finishMin ? one : worst))
}

/** Most greens that the sand of the whole horizon can dress. */
export const mostBySand = ({ problem, greens }: BoundGround): number =>
  (['damp', 'kilnDried'] as const).reduce((count, kind) => {
    let left = suppliedAt(problem, kind, problem.horizonMin) + SLACK_T
    const takes = greens
      .filter((green) => green.green.sand.kind === kind)
      .map(sandOf)
      .toSorted((a, b) => a - b)
    return count + takes.filter((massT) => (left -= massT) >= 0).length
  }, 0)
