import { describe, expect, it } from 'vitest'
import { randomCourse } from '../../course/random-course.ts'
import { check, isCleanSchedule } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import { smallProblem } from '../check/small-course.ts'
import { SMALL_UNPLANNED, smallTasks } from '../check/small-plan.ts'
import { WEATHER_PORTS } from '../make-plan.ts'
import type { Problem, ProblemTines } from '../problem.ts'
import { readProblem } from '../read-problem.ts'
import { openedGreens } from '../score.ts'
import { whyHere } from '../why-here.ts'
import { solve } from './solve.ts'

const SCHEDULES = 30

/** The small course with a count of tines: each coring wears six tenths of a set. The watering by hand is left out, since the search plans work with machines. */
const counted = (tines: readonly ProblemTines[]): Problem => {
  const problem = smallProblem()
  const greens = problem.greens.map((green) => ({
    ...green,
    steps: green.steps
      .filter(({ operation }) => operation !== 'water')
      .map((step) => (step.operation === 'core' ? { ...step, tines: { kind: 0, sets: 0.6 } } : step)),
  }))
  return { ...problem, greens, tines }
}

const solved = (problem: Problem) => {
  const { schedule } = solve(problem, { seed: 1, schedules: SCHEDULES })
  const opened = new Map(openedGreens(problem, schedule.tasks).map((one) => [one.green, one.opened]))
  return { schedule, opened, isClean: isCleanSchedule(compileProblem(problem), schedule) }
}

const entry = (sets: number, ...deliveries: ProblemTines['deliveries'][number][]): ProblemTines => ({
  kind: 0,
  sets,
  deliveries,
})

/* By hand: b can be opened at 551 at the soonest, when a (opened at 501, cored by 531) has been looked at for 20 minutes. Two corings wear 1.2 sets. */
describe('tine sets in stock', () => {
  it('are no matter where there are enough, or where nobody counts them', () => {
    expect(solved(counted([entry(1.2)])).opened.get(1)).toBe(551)
    expect(solved({ ...counted([]), greens: smallProblem().greens.slice(0, 1) }).opened.get(0)).toBe(501)
  })

  it('that are too few make the second green wait for the delivery, to the minute, and it is told why', () => {
    const problem = counted([entry(1, { atMin: 560, sets: 1 })])
    const { schedule, opened, isClean } = solved(problem)
    expect([...opened.values()].sort((a, b) => a - b)).toEqual([501, 560])
    expect(isClean).toBe(true)
    const cored = schedule.tasks.findIndex(({ kind, startMin }) => kind === 'core' && startMin === 560)
    expect(whyHere(problem, schedule.tasks, cored).reasons[0]).toMatchObject({
      hold: 'delivery',
      earliestMin: 560,
    })
  })

  it('that never come leave a green, with what it takes and what is left for it', () => {
    const { schedule, isClean } = solved(counted([entry(1)]))
    expect(schedule.unplanned).toEqual([
      expect.objectContaining({
        reason: 'tinesShort',
        facts: {
          needSets: expect.closeTo(0.6, 5) as number,
          availableSets: expect.closeTo(0.4, 5) as number,
        },
      }),
    ])
    expect(isClean).toBe(true)
  })

  it('of one kind do not do for another', () => {
    const other = { ...entry(5), kind: 1 }
    expect(solved(counted([entry(0), other])).schedule.unplanned.map(({ reason }) => reason)).toEqual([
      'tinesShort',
      'tinesShort',
    ])
  })

  it('count together from several entries, and what stands already has worn its own', () => {
    expect(solved(counted([entry(0.6), entry(0.6)])).schedule.unplanned).toEqual([])
    const problem = counted([entry(1)])
    const whole = solved(counted([entry(1.2)])).schedule.tasks
    const stood = whole.filter(({ startMin }) => startMin < 520)
    const again = solved({ ...problem, committed: { nowMin: 520, tasks: stood, pins: [] } })
    expect(again.schedule.unplanned.map(({ green, reason }) => `${green} ${reason}`)).toEqual([
      '1 tinesShort',
    ])
  })

  it('hold the checker to the minute: a coring a minute before the delivery lacks a fifth of a set', () => {
    const plan = { tasks: [...smallTasks()], unplanned: SMALL_UNPLANNED }
    const withWater = (tines: readonly ProblemTines[]): Problem => {
      const problem = smallProblem()
      const greens = problem.greens.map((green) => ({
        ...green,
        steps: green.steps.map((step) =>
          step.operation === 'core' ? { ...step, tines: { kind: 0, sets: 0.6 } } : step,
        ),
      }))
      return { ...problem, greens, tines }
    }
    const found = (atMin: number) =>
      check(compileProblem(withWater([entry(1, { atMin, sets: 1 })])), plan).map(
        ({ rule, green, by }) => `${rule} ${green ?? ''} ${by}`,
      )
    expect(found(551)).toEqual([])
    expect(found(552)).toEqual(['tinesGone b 0.2'])
  })
})

describe('tine sets of random courses', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'are never overdrawn, and leave out no green that they suffice for (course %i)',
    (seed) => {
      const made = randomCourse({ seed, greens: 6, days: 7, weather: 'dry', sand: 'enough' })
      const tined = made.prescription.groups.flatMap(({ chain }) => chain.flatMap(({ tines }) => tines ?? []))
      const kinds = [
        ...new Map(tined.map((one) => [`${one.holeDiameterMm}/${one.coreDiameterMm}`, one])).values(),
      ]
      const day = made.start
      const courseWith = (sets: number) => ({
        ...made.course,
        tineSets: kinds.map(({ holeDiameterMm, coreDiameterMm }, index) => ({
          id: `t${index}`,
          holeDiameterMm,
          coreDiameterMm,
          sets,
          deliveries: [{ date: day, time: '12:00', sets: 0.2 }],
        })),
      })
      for (const sets of [0.1, 0.3, 50]) {
        const read = readProblem({ ...made, course: courseWith(sets), days: 7 }, WEATHER_PORTS)
        if (!read.ok) throw new Error(JSON.stringify(read.error))
        const { schedule } = solve(read.value, { seed, schedules: 20 })
        expect(isCleanSchedule(compileProblem(read.value), schedule)).toBe(true)
        const isShort = schedule.unplanned.some(({ reason }) => reason === 'tinesShort')
        if (sets === 50) expect(isShort).toBe(false)
      }
    },
  )
})
