import { describe, expect, it } from 'vitest'
import { ask, goalOf, lubyTerm, missed, reached } from './goal.ts'

describe('goal', () => {
  it('begins a quarter of the open stretch below the best, twice as far after a success, half as far after a failure', () => {
    // Shorter schedules may end from 60 to 100: the best known ends at 101.
    const goal = goalOf()
    expect(ask(goal, 60, 100)).toBe(91)
    reached(goal)
    // Found 91: 60 to 90 are left; 20 below 91.
    expect(ask(goal, 60, 90)).toBe(71)
    missed(goal)
    expect(ask(goal, 60, 90)).toBe(81)
  })

  it('never asks below the bound, and asks for nothing where one unit less is asked for anyway', () => {
    const goal = goalOf()
    goal.step = 50
    expect(ask(goal, 60, 90)).toBe(60)
    goal.step = 1
    expect(ask(goal, 60, 90)).toBeNull()
    missed(goal)
    expect(goal.step).toBe(1)
  })
})

describe('lubyTerm', () => {
  it('gives the published series', () => {
    // Luby, Sinclair and Zuckerman, 'Optimal speedup of Las Vegas algorithms', Information Processing Letters 47 (1993), section 1.
    const published = [1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8]
    expect(published.map((_, at) => lubyTerm(at + 1))).toEqual(published)
  })
})
