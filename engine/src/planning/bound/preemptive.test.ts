import { describe, expect, it } from 'vitest'
import { isInTime, type Job } from './preemptive.ts'

/**
 * Seven jobs of J. Carlier, The one-machine sequencing problem, European Journal of Operational Research 11 (1982), as remembered: heads, minutes, tails. The best
 * schedule that may not break off a job takes 50. With breaking off, by hand: job 6 from 0 to 6; job 1 from 10; job 3 from 11; job 2 from 13 to 19 (and its tail to
 * 45); job 3 to 24 (48); job 4 to 28 (49); job 1 to 30; job 5 to 33 (41); job 1 to 35 (42); job 7 to 37. The latest of these is 49.
 */
const CARLIER: readonly (readonly [number, number, number])[] = [
  [10, 5, 7],
  [13, 6, 26],
  [11, 7, 24],
  [20, 4, 21],
  [30, 3, 8],
  [0, 6, 17],
  [30, 2, 0],
]

const jobsBy = (end: number): Job[] =>
  CARLIER.map(([release, minutes, tail]) => ({ release, minutes, deadline: end - tail }))

describe('the preemptive one-machine test', () => {
  it('lets the seven jobs of Carlier be over by 49 and not by 48', () => {
    expect(isInTime(jobsBy(49))).toBe(true)
    expect(isInTime(jobsBy(48))).toBe(false)
  })

  it('does not mind the order in which jobs are given', () => {
    expect(isInTime(jobsBy(49).toReversed())).toBe(true)
    expect(isInTime(jobsBy(48).toReversed())).toBe(false)
  })

  it('refuses a job that is longer than the time it has', () => {
    expect(isInTime([{ release: 5, minutes: 6, deadline: 10 }])).toBe(false)
    expect(isInTime([{ release: 5, minutes: 5, deadline: 10 }])).toBe(true)
    expect(isInTime([])).toBe(true)
  })
})
