import { describe, expect, it } from 'vitest'
import { smallProblem } from '../check/small-course.ts'
import { smallTasks } from '../check/small-plan.ts'
import type { ScheduledTask } from '../problem.ts'
import { changeOf } from './change.ts'
import { scheduledTasks, stepTasks } from './old-plan.ts'

const problem = smallProblem()
const tasks = scheduledTasks(problem, smallTasks())
const old = stepTasks(problem, tasks)
const NOW = 700

const changed = (kind: string, green: number, change: Partial<ScheduledTask>): readonly ScheduledTask[] =>
  tasks.map((task) => (task.kind === kind && task.green === green ? { ...task, ...change } : task))

describe('the measure of change', () => {
  it('is nothing for the same plan, and counts nothing that was begun before now', () => {
    expect(changeOf(problem, old, tasks, NOW)).toEqual({ tasksMoved: 0, minutesMoved: 0, points: 0 })
    const before = changed('core', 0, { startMin: 480, finishMin: 510 })
    expect(changeOf(problem, old, before, NOW).points).toBe(0)
  })

  it('counts minutes moved, weighted by how near to now they were planned', () => {
    // Dragging b was planned at 726, 26 after now: 240 / 266 of 12 minutes.
    const later = changed('dragIn', 1, { startMin: 738, finishMin: 753 })
    const found = changeOf(problem, old, later, NOW)
    expect(found.minutesMoved).toBe(12)
    expect(found.points).toBeCloseTo((12 * 240) / 266, 12)
  })

  it('counts a step in other hands as thirty minutes', () => {
    // Rolling b was planned at 751, 51 after now.
    const found = changeOf(problem, old, changed('roll', 1, { people: [1] }), NOW)
    expect(found).toEqual({ tasksMoved: 1, minutesMoved: 0, points: (240 / 291) * 30 })
  })

  it('counts a step that falls away as moved by 600 minutes, and no step as more', () => {
    const without = tasks.filter((task) => !(task.kind === 'roll' && task.green === 1))
    expect(changeOf(problem, old, without, NOW).minutesMoved).toBe(600)
    const nextDay = changed('roll', 1, { startMin: 2000, finishMin: 2010 })
    expect(changeOf(problem, old, nextDay, NOW).minutesMoved).toBe(600)
  })
})
