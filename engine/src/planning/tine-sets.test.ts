import { describe, expect, it } from 'vitest'
import type { Course } from '../course/course.ts'
import { WEATHER_PORTS } from './make-plan.ts'
import { readProblem } from './read-problem.ts'
import { demoInput } from './testing/demo.ts'

const demo = demoInput()
const { tineSets: _, ...uncounted } = demo.course

const problemOf = (course: Course) => {
  const read = readProblem({ ...demo, course, days: 7 }, WEATHER_PORTS)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return read.value
}

const withSets = (tineSets: NonNullable<Course['tineSets']>): Course => ({ ...uncounted, tineSets })

const TEN = {
  id: 'ten',
  holeDiameterMm: 10,
  coreDiameterMm: 8,
  sets: 2,
  deliveries: [{ date: '2026-08-12', time: '09:30', sets: 1 }],
}

describe('tine sets of a course', () => {
  it('are no part of the problem where the club keeps no count', () => {
    const problem = problemOf(uncounted)
    expect(problem.tines).toBeUndefined()
    expect(problem.greens.flatMap(({ steps }) => steps.filter(({ tines }) => tines !== undefined))).toEqual(
      [],
    )
    expect(problem.assumed.filter((code) => code.startsWith('tine'))).toEqual([])
  })

  it('are worn by area: a mean green wears one part of the greens that a set lasts, and all greens together as many', () => {
    const problem = problemOf(withSets([TEN]))
    // 12 greens a set, on the demo's greens with 10 mm tines; areas as the course file has them.
    const meanM2 = demo.course.greens.reduce((sum, { areaM2 }) => sum + areaM2, 0) / demo.course.greens.length
    for (const green of problem.greens) {
      const areaM2 = demo.course.greens.find(({ id }) => id === green.id)?.areaM2 ?? 0
      const uses = green.steps.flatMap(({ tines }) => tines ?? [])
      if (['g05', 'g07', 'g17'].includes(green.id)) expect(uses).toEqual([])
      else expect(uses).toEqual([{ kind: 0, sets: expect.closeTo(areaM2 / meanM2 / 12, 9) as number }])
    }
  })

  it('come at the minute of their delivery: 09:30 of the third day', () => {
    expect(problemOf(withSets([TEN])).tines).toEqual([
      { kind: 0, sets: 2, deliveries: [{ atMin: 2 * 1440 + 9 * 60 + 30, sets: 1 }] },
    ])
  })

  it('of a kind that is asked for and not counted are taken to be at hand, and that is told', () => {
    expect(problemOf(withSets([TEN])).assumed).toContain('tine-sets-unknown:8/6')
    expect(problemOf(withSets([TEN])).assumed).not.toContain('tine-sets-unknown:10/8')
  })
})
