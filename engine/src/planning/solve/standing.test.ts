import { describe, expect, it } from 'vitest'
import { randomCourse } from '../../course/random-course.ts'
import { isCleanSchedule } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import type { Pin } from '../committed.ts'
import { WEATHER_PORTS } from '../make-plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { readProblem } from '../read-problem.ts'
import { openedGreens } from '../score.ts'
import { solve } from './solve.ts'

const DAYS = 7
const SCHEDULES = 20

const problemOf = (seed: number, greens: number): Problem => {
  const made = randomCourse({ seed, greens, days: DAYS, weather: 'dry', sand: 'enough' })
  const read = readProblem({ ...made, days: DAYS }, WEATHER_PORTS)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return read.value
}

const isWork = (task: ScheduledTask): boolean =>
  task.kind !== 'move' && task.kind !== 'load' && task.kind !== 'setUp'

/** What has begun by a minute stands. */
const stoodAt = (tasks: readonly ScheduledTask[], nowMin: number): readonly ScheduledTask[] =>
  tasks.filter((task) => task.startMin <= nowMin)

/** Greens that are opened and not finished in what stands. */
const openIn = (problem: Problem, all: readonly ScheduledTask[], nowMin: number): readonly number[] =>
  openedGreens(problem, all)
    .filter(({ opened, finished }) => opened <= nowMin && finished > nowMin)
    .map(({ green }) => green)

const replanned = (
  problem: Problem,
  nowMin: number,
  tasks: readonly ScheduledTask[],
  pins: readonly Pin[] = [],
) => solve({ ...problem, committed: { nowMin, tasks, pins } }, { seed: 1, schedules: SCHEDULES })

describe('what stands already', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'is kept, nothing else begins before now, and the whole is clean (random course %i)',
    (seed) => {
      const problem = problemOf(seed, 6)
      const first = solve(problem, { seed, schedules: SCHEDULES }).schedule
      const nowMin = first.tasks[Math.floor(first.tasks.length / 3)]?.startMin ?? 0
      const stood = stoodAt(first.tasks, nowMin)
      const { schedule } = replanned(problem, nowMin, stood)
      expect(schedule.tasks).toEqual(expect.arrayContaining([...stood]))
      const fresh = schedule.tasks.filter((task) => !stood.includes(task))
      expect(fresh.every((task) => task.startMin >= nowMin)).toBe(true)
      expect(isCleanSchedule(compileProblem(problem), schedule)).toBe(true)
    },
  )

  it('is told in order of start', () => {
    const problem = problemOf(2, 6)
    const first = solve(problem, { seed: 2, schedules: SCHEDULES }).schedule
    const nowMin = first.tasks[20]?.startMin ?? 0
    const starts = replanned(problem, nowMin, stoodAt(first.tasks, nowMin)).schedule.tasks.map(
      (task) => task.startMin,
    )
    expect(starts).toEqual([...starts].sort((a, b) => a - b))
  })

  it.each([1, 2, 3, 4])(
    'has its opened greens finished, in the window that they were opened in (random course %i)',
    (seed) => {
      const problem = problemOf(seed, 6)
      const first = solve(problem, { seed, schedules: SCHEDULES }).schedule
      const nowMin = first.tasks[Math.floor(first.tasks.length / 3)]?.startMin ?? 0
      const open = openIn(problem, first.tasks, nowMin)
      const { schedule } = replanned(problem, nowMin, stoodAt(first.tasks, nowMin))
      expect(open.length).toBeGreaterThan(0)
      expect(schedule.unplanned.map(({ green }) => green).filter((green) => open.includes(green))).toEqual([])
      const byGreen = new Map(openedGreens(problem, schedule.tasks).map((one) => [one.green, one]))
      for (const green of open) {
        const one = byGreen.get(green)
        const day = problem.days.find(({ endMin }) => (one?.opened ?? 0) < endMin)
        expect(one?.finished).toBeLessThanOrEqual(day?.darkMin ?? 0)
      }
    },
  )

  it('goes to a green in work before one that is not opened, though the order says otherwise', () => {
    const problem = problemOf(3, 4)
    const first = solve(problem, { seed: 1, schedules: SCHEDULES }).schedule
    const [opened] = openedGreens(problem, first.tasks)
    const green = opened?.green ?? 0
    const own = first.tasks.filter((task) => task.green === green && isWork(task))
    const nowMin = own[0]?.finishMin ?? 0
    const stood = stoodAt(first.tasks, nowMin - 1)
    const others = [0, 1, 2, 3].filter((other) => other !== green)
    const { schedule } = solve(
      { ...problem, committed: { nowMin, tasks: stood, pins: [] } },
      { seed: 1, schedules: 1, startOrder: [...others, green] },
    )
    const finished = new Map(openedGreens(problem, schedule.tasks).map((one) => [one.green, one.finished]))
    expect(finished.get(green)).toBeLessThanOrEqual(opened?.finished ?? 0)
  })

  it('finishes an opened green whose rain has come early as soon as may be, after it', () => {
    const problem = problemOf(3, 4)
    const first = solve(problem, { seed: 1, schedules: SCHEDULES }).schedule
    const [opened] = openedGreens(problem, first.tasks)
    const nowMin = (opened?.opened ?? 0) + 1
    const rain = [{ start: nowMin + 5, end: nowMin + 120 }]
    const caught = { ...problem, rain, committed: { nowMin, tasks: stoodAt(first.tasks, nowMin), pins: [] } }
    const { schedule } = solve(caught, { seed: 1, schedules: 5 })
    expect(schedule.unplanned.map(({ green }) => green)).not.toContain(opened?.green)
    const one = openedGreens(problem, schedule.tasks).find(({ green }) => green === opened?.green)
    expect(one?.finished).toBeGreaterThan(nowMin + 5)
    expect(one?.finished).toBeLessThan(problem.horizonMin)
  })

  it('says that an opened green has no window when nobody can finish it any more', () => {
    const problem = problemOf(3, 4)
    const first = solve(problem, { seed: 1, schedules: SCHEDULES }).schedule
    const [opened] = openedGreens(problem, first.tasks)
    const nowMin = (opened?.opened ?? 0) + 1
    const gone = {
      ...problem,
      greens: problem.greens.map((green, index) =>
        index === opened?.green
          ? { ...green, steps: green.steps.map((step) => ({ ...step, minutesByMachine: new Map() })) }
          : green,
      ),
      committed: { nowMin, tasks: stoodAt(first.tasks, nowMin), pins: [] },
    }
    const { schedule } = solve(gone, { seed: 1, schedules: 5 })
    expect(schedule.unplanned).toEqual([
      expect.objectContaining({ green: opened?.green, reason: 'noWindow' }),
    ])
  })

  it.each([1, 2])(
    'is kept where single steps of the greens in work are moved about, and the finish is no later (random course %i)',
    (seed) => {
      const problem = problemOf(seed, 6)
      const first = solve(problem, { seed, schedules: SCHEDULES }).schedule
      const nowMin = first.tasks[Math.floor(first.tasks.length / 3)]?.startMin ?? 0
      const tasks = stoodAt(first.tasks, nowMin)
      const committed = { nowMin, tasks, pins: [] }
      const few = solve({ ...problem, committed }, { seed: 1, schedules: SCHEDULES })
      const many = solve({ ...problem, committed }, { seed: 1, schedules: 1500 })
      expect(many.schedule.tasks).toEqual(expect.arrayContaining([...tasks]))
      expect(isCleanSchedule(compileProblem(problem), many.schedule)).toBe(true)
      expect(many.score.finishMin).toBeLessThanOrEqual(few.score.finishMin)
    },
  )
})

describe('pins', () => {
  const problem = problemOf(5, 5)
  const first = solve(problem, { seed: 1, schedules: SCHEDULES }).schedule
  const compiled = compileProblem(problem)

  it('open a green on its day, at its minute', () => {
    const pin: Pin = {
      kind: 'green',
      green: 2,
      day: 3,
      openMin: (problem.days[3]?.startMin ?? 0) + 9 * 60 + 20,
    }
    const { schedule } = replanned(problem, 0, [], [pin])
    const one = openedGreens(problem, schedule.tasks).find(({ green }) => green === 2)
    expect(one?.opened).toBe(pin.openMin)
    expect(isCleanSchedule(compiled, schedule)).toBe(true)
  })

  it('open a green on its day where no minute is named', () => {
    const { schedule } = replanned(problem, 0, [], [{ kind: 'green', green: 1, day: 4, openMin: null }])
    const one = openedGreens(problem, schedule.tasks).find(({ green }) => green === 1)
    const day = problem.days[4]
    expect(one?.opened).toBeGreaterThanOrEqual(day?.startMin ?? 0)
    expect(one?.finished).toBeLessThanOrEqual(day?.darkMin ?? 0)
    expect(isCleanSchedule(compiled, schedule)).toBe(true)
  })

  it('hold a step to its start, its machine and its people', () => {
    const task = first.tasks.find((one) => one.kind === 'roll' || one.kind === 'dragIn')
    const steps = problem.greens[task?.green ?? 0]?.steps ?? []
    const step = steps.findIndex((one) => one.operation === task?.kind && one.pass === task.pass)
    const pin: Pin = {
      kind: 'step',
      green: task?.green ?? 0,
      step,
      startMin: (task?.startMin ?? 0) + 7,
      machine: task?.machine ?? null,
      people: task?.people ?? null,
    }
    const { schedule } = replanned(problem, 0, [], [pin])
    const kept = schedule.tasks.find(
      (one) => one.green === pin.green && one.kind === task?.kind && one.pass === task.pass,
    )
    expect(kept).toMatchObject({ startMin: pin.startMin, machine: pin.machine, people: pin.people })
    expect(isCleanSchedule(compiled, schedule)).toBe(true)
  })
})

describe('a plan made near another one', () => {
  it.each([1, 2, 3])('is the same when nothing has happened (random course %i)', (seed) => {
    const problem = problemOf(seed, 6)
    const first = solve(problem, { seed, schedules: SCHEDULES }).schedule
    const key = (task: ScheduledTask): string =>
      [task.kind, task.green, task.startMin, task.machine].join(' ')
    const had = new Set(first.tasks.map(key))
    const penalty = (tasks: readonly ScheduledTask[]): number =>
      tasks.filter((task) => !had.has(key(task))).length
    const near = solve(problem, { seed, schedules: 30, near: { tasks: first.tasks, penalty } })
    expect(penalty(near.schedule.tasks)).toBe(0)
  })
})
