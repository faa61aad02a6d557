import { describe, expect, it } from 'vitest'
import { pairsOf } from './pairs.ts'
import { projectFrom } from './testing/tiny-project.ts'

/** Three activities of 4, 3 and 2 that each need the whole of one machine. */
const onOneMachine = (lags: readonly (readonly [number, number, number])[]) =>
  projectFrom({
    durations: [0, 4, 3, 2, 0],
    capacities: [1],
    demands: [[0], [1], [1], [1], [0]],
    lags: [[0, 1, 0], [0, 2, 0], [0, 3, 0], ...lags],
  })

describe('pairs', () => {
  it('leaves open what may go either way', () => {
    expect(pairsOf(onOneMachine([]))).toMatchObject({ first: [1, 1, 2], second: [2, 3, 3] })
  })

  it('orders a pair whose lag leaves one order only, and what follows from that order', () => {
    const pairs = pairsOf(
      onOneMachine([
        [1, 2, -2],
        [2, 3, -1],
      ]),
    )
    // 1 -> 2: start[2] >= start[1] - 2; 2 before 1 would need start[1] >= start[2] + 3, that is start[2] <= start[1] - 3. So 1 first: start[2] >= start[1] + 4.
    // 2 -> 3: start[3] >= start[2] - 1; 3 before 2 would need start[3] <= start[2] - 2. So 2 first: start[3] >= start[2] + 3, and 1 before 3 by 7.
    expect(pairs).toMatchObject({ first: [], second: [] })
    expect(pairs?.distances?.[1 * 5 + 2]).toBe(4)
    expect(pairs?.distances?.[2 * 5 + 3]).toBe(3)
    expect(pairs?.distances?.[1 * 5 + 3]).toBe(7)
  })

  it('finds the cycle that forced orders close', () => {
    // 1 before 2 is forced as above; but 2 may start at most 3 after 1, and 1 takes 4.
    const project = onOneMachine([
      [1, 2, -2],
      [2, 1, -3],
    ])
    expect(pairsOf(project)).toBeNull()
  })

  it('does not count activities that fit beside each other, or that take no time', () => {
    const project = projectFrom({
      durations: [0, 4, 3, 0, 0],
      capacities: [5],
      demands: [[0], [2], [3], [5], [0]],
      lags: [],
    })
    expect(pairsOf(project)).toMatchObject({ first: [], second: [] })
  })
})
