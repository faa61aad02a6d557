import type { ChainMarks } from '../chain.ts'
import { OPERATIONS } from '../operations.ts'
import type { Problem, ProblemStep } from '../problem.ts'
import { takesOf } from './supplies.ts'

/** The steps of all greens, one after another: step `firstStep[green] + i` is the green's step `i`. */
export type GroundSteps = {
  readonly steps: number
  /** One longer than there are greens. */
  readonly firstStep: Int32Array
  readonly greenOfStep: Int32Array
  readonly openStep: Int32Array
  readonly clearStep: Int32Array
  readonly finishStep: Int32Array
  readonly operation: Uint8Array
  readonly lagMin: Int32Array
  readonly nextDay: Uint8Array
  readonly needsLoad: Uint8Array
  readonly isDress: Uint8Array
  /** Stock that the step takes from (index into `supplies`), -1 where it takes nothing; and how much, grams of sand or millionths of a tine set. */
  readonly stockOfStep: Int8Array
  readonly amount: Int32Array
  readonly leastMin: Int32Array
  /** By green: the least minutes of all its steps, 0 where one of them can't be done. And of all greens together. */
  readonly greenMin: Int32Array
  readonly workMin: number
  /** Least minutes from the finish of a step to that of the green's clearing and of its finishing step; 0 behind them. */
  readonly clearTailMin: Int32Array
  readonly tailMin: Int32Array
  /** Ways to do a step: `choiceFirst[step]` up to `choiceFirst[step + 1]`. */
  readonly choiceFirst: Int32Array
  readonly choiceMachine: Uint8Array
  readonly choiceMin: Int32Array
}

/** The least minutes between two steps that follow each other: the stated wait, and a refill where only one machine can do both. */
const leastBetween = (problem: Problem, before: ProblemStep, step: ProblemStep): number => {
  if (step.load === null || before.load === null || step.minutesByMachine.size !== 1) return step.lagMin
  const [id] = step.minutesByMachine.keys()
  const machine = problem.machines.find((one) => one.id === id)
  return Math.max(step.lagMin, machine?.loadMin ?? 0)
}

const leastOf = (step: ProblemStep): number => Math.min(...step.minutesByMachine.values())

/** Least minutes from the finish of each step to the finish of step `goal` of the same green. */
const tailsTo = (problem: Problem, steps: readonly ProblemStep[], goal: number): readonly number[] => {
  const tails = steps.map(() => 0)
  for (let i = goal - 1; i >= 0; i--) {
    const step = steps[i]
    const next = steps[i + 1]
    if (step !== undefined && next !== undefined)
      tails[i] = leastBetween(problem, step, next) + leastOf(next) + (tails[i + 1] ?? 0)
  }
  return tails
}

const firsts = (lengths: readonly number[]): Int32Array => {
  const first = new Int32Array(lengths.length + 1)
  lengths.forEach((length, index) => {
    first[index + 1] = (first[index] ?? 0) + length
  })
  return first
}

/** Lays the steps of a problem out flat. */
export const groundOfSteps = (problem: Problem, marks: readonly ChainMarks[]): GroundSteps => {
  const { greens, machines } = problem
  const all = greens.flatMap((green) => green.steps)
  const firstStep = firsts(greens.map((green) => green.steps.length))
  const markOf = (mark: keyof ChainMarks): Int32Array =>
    Int32Array.from(greens, (_, index) => (firstStep[index] ?? 0) + (marks[index]?.[mark] ?? 0))
  const choices = all.map((step) =>
    machines.flatMap(({ id }, machine) => {
      const minutes = step.minutesByMachine.get(id)
      return minutes === undefined ? [] : [{ machine, minutes }]
    }),
  )
  const whole = (pick: (step: ProblemStep) => number): Int32Array => Int32Array.from(all, pick)
  const flags = (pick: (step: ProblemStep) => boolean): Uint8Array =>
    Uint8Array.from(all, (step) => (pick(step) ? 1 : 0))
  const tails = (mark: keyof ChainMarks): Int32Array =>
    Int32Array.from(
      greens.flatMap((green, index) => tailsTo(problem, green.steps, marks[index]?.[mark] ?? 0)),
    )
  const greenMin = Int32Array.from(greens, ({ steps }) => steps.reduce((sum, step) => sum + leastOf(step), 0))
  return {
    steps: all.length,
    firstStep,
    greenOfStep: Int32Array.from(greens.flatMap((green, index) => green.steps.map(() => index))),
    openStep: markOf('open'),
    clearStep: markOf('clear'),
    finishStep: markOf('finish'),
    operation: Uint8Array.from(all, (step) => OPERATIONS.indexOf(step.operation)),
    lagMin: whole((step) => step.lagMin),
    nextDay: flags((step) => step.nextDay),
    needsLoad: flags((step) => step.load !== null),
    isDress: flags((step) => step.operation === 'dress'),
    ...takesOf(greens),
    leastMin: whole(leastOf),
    greenMin,
    workMin: greenMin.reduce((sum, minutes) => sum + minutes, 0),
    clearTailMin: tails('clear'),
    tailMin: tails('finish'),
    choiceFirst: firsts(choices.map((list) => list.length)),
    choiceMachine: Uint8Array.from(choices.flat(), (choice) => choice.machine),
    choiceMin: Int32Array.from(choices.flat(), (choice) => choice.minutes),
  }
}
