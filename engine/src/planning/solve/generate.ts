import { chainMarks } from '../chain.ts'
import type { Problem } from '../problem.ts'
import type { Ground, WorkWindow } from './ground.ts'
import { emptySchedule, type Growing } from './growing.ts'
import { placeGreen } from './place-green.ts'

/** What a green may be asked to bear in a window. */
export type Attempt = { readonly keepFixtures: boolean; readonly overNight: boolean }

/** A schedule and the greens (indices) that found no place in it. */
export type Generated = { readonly growing: Growing; readonly left: readonly number[] }

/**
 * Sets of attempts, kindest first: fixtures kept and no night; then a dry night where the club allows it; then fixtures given up.
 * A later set is only worth generating when an earlier one leaves greens out.
 */
export const attemptSets = (problem: Problem): readonly (readonly Attempt[])[] => {
  const plain: readonly Attempt[] = [{ keepFixtures: true, overNight: false }]
  const night: readonly Attempt[] = problem.settings.mayStandDryNight
    ? [...plain, { keepFixtures: true, overNight: true }]
    : plain
  const clash = [...night, ...night.map((attempt) => ({ ...attempt, keepFixtures: false }))]
  const hasFixtures = problem.greens.some((green) => green.fixtures.length > 0)
  return [plain, ...(night.length > 1 ? [night] : []), ...(hasFixtures ? [clash] : [])]
}

/** When the first green has been looked over: its opening step is done and the check made. */
const checkedFrom = (growing: Growing, index: number): number => {
  const { problem } = growing.ground
  const green = problem.greens[index]
  const step = green?.steps[chainMarks(green).open]
  const task = growing.tasks.find(
    (t) => t.green === index && t.kind === step?.operation && t.pass === step.pass,
  )
  return (task?.finishMin ?? 0) + problem.settings.firstGreenCheckMin
}

/** Greens that may be opened first: not the weak ones, as long as another is left. */
const firstCandidates = (growing: Growing, left: readonly number[]): readonly number[] => {
  const easy = left.filter((green) => growing.ground.problem.greens[green]?.weak !== true)
  return easy.length > 0 ? easy : left
}

type State = { left: readonly number[]; checkedMin: number | null }

const fillWindow = (growing: Growing, state: State, window: WorkWindow, attempt: Attempt): void => {
  if (state.checkedMin === null) {
    const first = firstCandidates(growing, state.left).find(
      (green) => placeGreen(growing, { green, window, from: 0, ...attempt }) !== null,
    )
    if (first === undefined) return
    state.left = state.left.filter((green) => green !== first)
    state.checkedMin = checkedFrom(growing, first)
  }
  const from = state.checkedMin
  state.left = state.left.filter((green) => placeGreen(growing, { green, window, from, ...attempt }) === null)
}

/**
 * Makes one schedule from an order of greens: window by window, each green in turn that still fits whole
 * (serial generation over the order, with look-ahead on the finish rule).
 */
export const generate = (
  ground: Ground,
  order: readonly number[],
  attempts: readonly Attempt[],
): Generated => {
  const growing = emptySchedule(ground)
  const state: State = { left: order, checkedMin: null }
  for (const window of ground.windows)
    for (const attempt of attempts) if (state.left.length > 0) fillWindow(growing, state, window, attempt)
  return { growing, left: state.left }
}
