import { describe, expect, it } from 'vitest'
import type { ScheduledTask } from '../problem.ts'
import { attendedMin, planBound } from './plan-bound.ts'
import { handProblem } from './testing/hand-problem.ts'

const problem = handProblem({
  chain: ['core', 'roll'],
  minutes: [[40, 20]],
  machines: [1, 1],
  people: 2,
  shift: { start: 480, end: 960 },
})

const task = (kind: 'core' | 'roll', startMin: number, finishMin: number): ScheduledTask => ({
  kind,
  green: 0,
  pass: 1,
  load: null,
  machine: kind === 'core' ? 0 : 1,
  people: [0],
  startMin,
  finishMin,
})

describe('how far a plan may be from the best', () => {
  it('counts minutes with somebody on shift only, by hand', () => {
    // From 09:00 of the first day to 09:00 of the second: seven hours, and one.
    expect(attendedMin(problem, 540, 1980)).toBe(480)
  })

  it('is nothing for a plan that ends at the bound', () => {
    const tasks = [task('core', 480, 520), task('roll', 520, 540)]
    expect(planBound(problem, tasks)).toEqual({
      finishMin: 540,
      gapPercent: 0,
      by: { part: 'chain', green: 'g1' },
    })
  })

  it('is the share of the manned time that could be saved', () => {
    // Begun at 480 and ended at 640: 100 of 160 minutes.
    expect(planBound(problem, [task('core', 480, 520), task('roll', 620, 640)])?.gapPercent).toBe(62.5)
  })

  it('is none where nothing is planned', () => {
    expect(planBound(problem, [])).toBe(null)
  })
})
