import { dryFrom } from '../../dried.ts'
import { NEVER } from '../../spans.ts'
import { SHED } from '../compile.ts'
import { dutiesOf, type Duty } from './duty.ts'
import type { LeftStep, LostGround, Option } from './left-of-green.ts'
import { bayOf, bringing, readyAfter, takesSand, wayOf } from './machine-at.ts'

/** A piece of work that must be done: a step of a green, or the set-up of a machine that some step can't do without. */
export type RowTask = {
  /** The machines that can do it. */
  readonly options: readonly Option[]
  readonly crew: number
  readonly duty: Duty
}

/** One task begins no sooner than so long after the end of another. */
export type Link = { readonly ahead: number; readonly behind: number; readonly gapMin: number }

/** A step that waits for the sand of a dress step, and the first minute at which sand that lies from a minute on is dry enough. */
export type Drying = {
  readonly dress: number
  readonly behind: number
  readonly dryMin: (dressedMin: number) => number
}

/** Two steps of different greens that the same machine may do: which is first? */
export type Pair = {
  readonly one: number
  readonly other: number
  /** The option, as a bit, by which each of them is on that machine. */
  readonly oneOn: number
  readonly otherOn: number
  /** Minutes from the end of the one to the start of the other on that machine, and from the other to the one. */
  readonly between: number
  readonly back: number
}

/** What is left to do of several greens together. */
export type Row = {
  readonly tasks: readonly RowTask[]
  readonly links: readonly Link[]
  readonly dryings: readonly Drying[]
  readonly pairs: readonly Pair[]
}

const placeOf = ({ facts }: LostGround, green: number): number => facts.problem.greens[green]?.place ?? SHED

/** Minutes between a machine's work on one green and on the next: the way, and for sand the way by the bay with the filling. */
const betweenMin = (ground: LostGround, machine: number, from: LeftStep, to: LeftStep): number => {
  const way = wayOf(ground.facts, machine)
  const [start, goal] = [placeOf(ground, from.green), placeOf(ground, to.green)]
  const bay = bayOf(ground.facts, to.green)
  return takesSand(to.step) && bay !== undefined
    ? way(start, bay) + (ground.facts.problem.machines[machine]?.loadMin ?? 0) + way(bay, goal)
    : way(start, goal)
}

const pairsOf = (ground: LostGround, steps: readonly LeftStep[]): readonly Pair[] =>
  steps.flatMap((a, one) =>
    steps.flatMap((b, other): readonly Pair[] =>
      other <= one || a.green === b.green
        ? []
        : a.options.flatMap(({ machine }, oneAt) => {
            const otherAt = b.options.findIndex((option) => option.machine === machine)
            if (machine < 0 || otherAt < 0) return []
            const between = betweenMin(ground, machine, a, b)
            const back = betweenMin(ground, machine, b, a)
            return [{ one, other, oneOn: 1 << oneAt, otherOn: 1 << otherAt, between, back }]
          }),
    ),
  )

const dryingsOf = ({ facts }: LostGround, steps: readonly LeftStep[]): readonly Drying[] =>
  steps.flatMap(({ green, step: { dryNeedMm } }, behind): readonly Drying[] => {
    const dress = steps.findLastIndex(
      (other, at) => at < behind && other.green === green && other.operation === 'dress',
    )
    if (dryNeedMm <= 0 || dress < 0) return []
    const known = new Map<number, number>()
    const dryMin = (dressedMin: number): number => {
      const found = known.get(dressedMin) ?? dryFrom(facts.problem.driedMm, dressedMin, dryNeedMm)
      known.set(dressedMin, found)
      return found
    }
    return [{ dress, behind, dryMin }]
  })

/** A machine that is not set up yet and that some steps can't do without: its set-up, and how long after it each of them begins at the soonest. */
type SetUp = { readonly task: RowTask; readonly before: readonly (readonly [step: number, gapMin: number])[] }

const setUpOf = (
  ground: LostGround,
  steps: readonly LeftStep[],
  machine: number,
  duty: Duty,
): SetUp | null => {
  const ready = readyAfter(ground.facts, machine, ground.nowMin)
  const bound = steps.flatMap((left, step) => {
    const [option] = left.options
    if (option?.machine !== machine || left.options.length > 1) return []
    const { setUpMin, comingMin } = bringing(ground, machine, left, ready)
    return [{ step, setUpMin, comingMin, latestEnd: option.latestEnd }]
  })
  const minutes = bound[0]?.setUpMin ?? 0
  if (minutes === 0) return null
  const latestEnd = Math.max(...bound.map((one) => one.latestEnd))
  return {
    task: {
      options: [{ machine, minutes, crew: 1, earliestStart: duty[0]?.fromMin ?? NEVER, latestEnd }],
      crew: 1,
      duty,
    },
    before: bound.map(({ step, comingMin }) => [step, comingMin]),
  }
}

/** Lays out what is left to do of several greens together: their steps in the order given, then the set-ups. */
export const rowOf = (ground: LostGround, steps: readonly LeftStep[]): Row => {
  const dutyOf = dutiesOf(ground)
  const work = steps.map(({ operation, green, options, crew }): RowTask => ({
    options,
    crew,
    duty: dutyOf([operation], placeOf(ground, green)),
  }))
  const chains = steps.flatMap(({ green, waitMin }, behind): readonly Link[] =>
    steps[behind - 1]?.green === green ? [{ ahead: behind - 1, behind, gapMin: waitMin }] : [],
  )
  const setUps = ground.facts.problem.machines.flatMap(
    ({ operations }, machine) => setUpOf(ground, steps, machine, dutyOf(operations, SHED)) ?? [],
  )
  const leads = setUps.flatMap(({ before }, index) =>
    before.map(([behind, gapMin]): Link => ({ ahead: steps.length + index, behind, gapMin })),
  )
  return {
    tasks: [...work, ...setUps.map(({ task }) => task)],
    links: [...chains, ...leads],
    dryings: dryingsOf(ground, steps),
    pairs: pairsOf(ground, steps),
  }
}
