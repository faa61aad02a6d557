import { describe, expect, it } from 'vitest'
import { checkProject, makespanOf } from './check-project.ts'
import { projectFrom } from './lags/testing/tiny-project.ts'

// Three activities between two dummies, one resource of 3 units. 1 (2 long, 2 units) and 2 (3 long, 2 units) cannot run together; 3 (1 long, 1 unit)
// waits for 1 and may start at most 4 after it.
const project = projectFrom({
  durations: [0, 2, 3, 1, 0],
  capacities: [3],
  demands: [[0], [2], [2], [1], [0]],
  lags: [
    [0, 1, 0],
    [0, 2, 0],
    [1, 3, 2],
    [3, 1, -4],
    [2, 4, 3],
    [3, 4, 1],
  ],
})
const check = (...starts: readonly number[]) => checkProject(project, Int32Array.from(starts))

describe('the checker of project schedules', () => {
  it('finds nothing where everything holds', () => {
    expect(check(0, 0, 2, 2, 5)).toEqual([])
    expect(makespanOf(project, Int32Array.from([0, 0, 2, 2, 5]))).toBe(5)
  })

  it('finds a precedence that is broken by one unit', () => {
    expect(check(0, 0, 2, 1, 5)).toEqual([{ type: 'lagBroken', from: 1, to: 3, least: 2, found: 1 }])
  })

  it('finds a maximum lag that is passed by one unit', () => {
    expect(check(0, 0, 2, 5, 6)).toEqual([{ type: 'lagBroken', from: 3, to: 1, least: -4, found: -5 }])
  })

  it('finds the first moment at which a resource is over its capacity', () => {
    expect(check(0, 0, 1, 2, 4)).toEqual([
      { type: 'overCapacity', resource: 0, time: 1, use: 4, capacity: 3 },
    ])
  })

  it('finds a start before time 0', () => {
    expect(check(0, -1, 2, 2, 5)).toEqual([
      { type: 'startBeforeZero', activity: 1, start: -1 },
      { type: 'lagBroken', from: 0, to: 1, least: 0, found: -1 },
    ])
  })

  it('finds that a start is missing', () => {
    expect(check(0, 0, 2, 2)).toEqual([{ type: 'countOfStarts', activities: 5, starts: 4 }])
  })
})
