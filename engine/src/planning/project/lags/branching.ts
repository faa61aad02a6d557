import type { Bounds } from './bounds.ts'
import type { Random } from '../../search/random.ts'

/** Scores of variables, the most often met in late clashes first (Moskewicz and others 2001), in a heap. */
export type Scores = {
  readonly score: Float64Array
  readonly heap: Int32Array
  /** Place of a variable in the heap; -1 = not in it. */
  readonly place: Int32Array
  heapSize: number
  step: number
}

/** Share by which older clashes lose weight at each new one. */
const FADING = 0.99
const TOO_LARGE = 1e100

/** All variables with small random scores, so that another seed breaks ties otherwise. */
export const scoresOf = (variables: number, random: Random): Scores => {
  const scores: Scores = {
    score: Float64Array.from({ length: variables }, () => random.below(1024) / 1e6),
    heap: new Int32Array(variables),
    place: new Int32Array(variables).fill(-1),
    heapSize: 0,
    step: 1,
  }
  for (let variable = 0; variable < variables; variable++) putBack(scores, variable)
  return scores
}

const moveUp = ({ score, heap, place }: Scores, from: number): void => {
  const variable = heap[from]!
  let at = from
  while (at > 0) {
    const parent = (at - 1) >> 1
    if (score[heap[parent]!]! >= score[variable]!) break
    heap[at] = heap[parent]!
    place[heap[at]!] = at
    at = parent
  }
  heap[at] = variable
  place[variable] = at
}

const moveDown = ({ score, heap, place, heapSize }: Scores, from: number): void => {
  const variable = heap[from]!
  let at = from
  for (;;) {
    let child = 2 * at + 1
    if (child >= heapSize) break
    if (child + 1 < heapSize && score[heap[child + 1]!]! > score[heap[child]!]!) child++
    if (score[heap[child]!]! <= score[variable]!) break
    heap[at] = heap[child]!
    place[heap[at]!] = at
    at = child
  }
  heap[at] = variable
  place[variable] = at
}

/** Puts a variable in the heap again, once it is open again. */
export const putBack = (scores: Scores, variable: number): void => {
  if (scores.place[variable]! >= 0) return
  scores.heap[scores.heapSize] = variable
  scores.place[variable] = scores.heapSize
  moveUp(scores, scores.heapSize++)
}

/** Raises the score of a variable that played a part in a clash. */
export const bump = (scores: Scores, variable: number): void => {
  const { score, place } = scores
  score[variable]! += scores.step
  if (score[variable]! > TOO_LARGE) {
    for (let other = 0; other < score.length; other++) score[other]! /= TOO_LARGE
    scores.step /= TOO_LARGE
  }
  if (place[variable]! >= 0) moveUp(scores, place[variable]!)
}

/** Makes older clashes weigh less. */
export const fade = (scores: Scores): void => {
  scores.step /= FADING
}

/** The open variable with the highest score, taken out of the heap; -1 = all are closed. */
export const takeHighest = (scores: Scores, { value }: Bounds): number => {
  while (scores.heapSize > 0) {
    const variable = scores.heap[0]!
    scores.heapSize--
    scores.place[variable] = -1
    if (scores.heapSize > 0) {
      scores.heap[0] = scores.heap[scores.heapSize]!
      moveDown(scores, 0)
    }
    if (value[2 * variable]! !== -value[2 * variable + 1]!) return variable
  }
  return -1
}

/** The open activity with the least earliest start; among equals the one with the least latest start, then the highest score. -1 = all are closed. */
export const takeEarliest = ({ score }: Scores, { value, activities }: Bounds): number => {
  let best = -1
  for (let activity = 0; activity < activities; activity++) {
    const earliest = value[2 * activity]!
    const latest = -value[2 * activity + 1]!
    if (earliest === latest) continue
    if (best >= 0) {
      if (earliest > value[2 * best]!) continue
      if (earliest === value[2 * best]!) {
        if (latest > -value[2 * best + 1]!) continue
        if (latest === -value[2 * best + 1]! && score[activity]! <= score[best]!) continue
      }
    }
    best = activity
  }
  return best
}
