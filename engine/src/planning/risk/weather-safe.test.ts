import { describe, expect, it } from 'vitest'
import { randomCourse } from '../../course/random-course.ts'
import { makeSafePlan, planRisk } from './plan-risk.ts'
import { withOneMore } from './what-if.ts'

const LEVEL = 0.05
const FRESH = 300

describe('a plan that keeps a level', () => {
  const week = randomCourse({ seed: 104, greens: 10, weather: 'mixed', sand: 'enough' })
  const input = { ...week, courseHash: '' }
  const made = makeSafePlan(input, { level: LEVEL, draws: 150, seed: 1 }, { seed: 1, schedules: 150 })
  if (!made.ok) throw new Error(made.error.type)
  const { plan, risk, plainRisk } = made.value

  it('is clean, and under the level on every day where the plain plan is not', () => {
    expect(plainRisk.days.some(({ chance }) => chance > LEVEL)).toBe(true)
    expect(risk.days.length).toBeGreaterThan(0)
    expect(risk.days.filter(({ chance }) => chance > LEVEL)).toEqual([])
    expect(plan.feasible).toBe(true)
  })

  it('keeps it on fresh weather within two standard deviations of a share', () => {
    const fresh = planRisk(plan, input, { level: LEVEL, draws: FRESH, seed: 2 })
    if (!fresh.ok) throw new Error(fresh.error.type)
    const limit = LEVEL + 2 * Math.sqrt((LEVEL * (1 - LEVEL)) / FRESH)
    expect(fresh.value.days.filter(({ chance }) => chance > limit)).toEqual([])
  })

  it('comes out the same again', () => {
    const again = makeSafePlan(input, { level: LEVEL, draws: 150, seed: 1 }, { seed: 1, schedules: 150 })
    expect(again).toEqual(made)
  })

  it('needs weather to draw from', () => {
    const none = planRisk(plan, { ...input, weather: null })
    expect(none).toEqual({ ok: false, error: { type: 'noWeather' } })
  })
})

describe('one thing more', () => {
  const { course } = randomCourse({ seed: 3, greens: 2 })
  const [machine] = course.machines

  it('is like what is there, under an id of its own', () => {
    if (machine === undefined) throw new Error('the course has machines')
    const more = withOneMore(course, { kind: 'machine', like: machine.id })
    expect(more?.machines.length).toBe(course.machines.length + 1)
    expect(more?.machines.at(-1)).toEqual({ ...machine, id: `${machine.id}-2` })
    expect(new Set(more?.machines.map(({ id }) => id)).size).toBe(course.machines.length + 1)
  })

  it('is like nothing that the course does not have', () => {
    expect(withOneMore(course, { kind: 'person', like: 'nobody' })).toBeNull()
  })
})
