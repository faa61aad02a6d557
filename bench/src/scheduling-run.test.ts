import { describe, expect, it } from 'vitest'
import { readProjects, solveProject, type ProjectFound, type ProjectSet } from '@swardwright/engine'
import { runSet, type RunOptions } from './scheduling-run.ts'

/** Two jobs of 3 and 2 that share one machine, and a pair of lags that contradict each other. By hand: 5, over a critical path of 3. */
const set = (): ProjectSet => {
  const jobs = { capacities: [1], durations: [0, 3, 2, 0], demands: [[0], [1], [1], [0]] }
  const read = readProjects({
    set: 'own',
    instances: {
      two: { ...jobs, successors: [[1, 2], [3], [3], []], bestKnown: 4 },
      never: {
        ...jobs,
        lags: [
          [0, 1, 0],
          [1, 2, 4],
          [2, 1, -3],
          [2, 3, 2],
          [1, 3, 3],
        ],
      },
    },
  })
  if (!read.ok) throw new Error(read.error.at)
  return read.value
}

const options = (more: Partial<RunOptions> = {}): RunOptions => ({
  schedules: 20,
  seconds: null,
  seed: 1,
  solve: solveProject,
  onProgress: () => undefined,
  ...more,
})

describe('a run over a set', () => {
  it('tells makespans, deviations and what has no schedule', () => {
    const run = runSet(set(), options())
    if (!run.ok) throw new Error(run.error)
    expect(run.value).toMatchObject({
      set: 'own',
      schedules: 20,
      solved: 1,
      infeasibleProven: 1,
      // (5 - 3) / 3 and (5 - 4) / 4.
      meanDeviationFromCriticalPathPercent: 66.6667,
      meanGapToBestKnownPercent: 25,
      cappedInstances: 0,
      makespans: { two: 5, never: null },
    })
  })

  it.each([
    ['overlap on the machine', [0, 0, 2, 5], 5, 'the schedule does not stand'],
    ['take longer than told', [0, 0, 3, 5], 4, 'the search tells 4, its schedule takes 5'],
  ])('ends with an error when starts %s', (_, starts, makespan, words) => {
    const solve = (): ProjectFound => ({
      starts: Int32Array.from(starts),
      makespan,
      schedules: 1,
      infeasibleProven: false,
    })
    const run = runSet(set(), options({ solve }))
    expect(run.ok ? '' : run.error).toContain(words)
  })

  it('counts what a cap on seconds cut short', () => {
    const solve: RunOptions['solve'] = (project, search) => {
      const isOver = search.stop?.() === true
      return solveProject(project, { schedules: isOver ? 1 : search.schedules, seed: search.seed })
    }
    const run = runSet(set(), options({ seconds: 0, solve }))
    if (!run.ok) throw new Error(run.error)
    expect([run.value.cappedInstances, run.value.makespans.two]).toEqual([2, 5])
    const ample = runSet(set(), options({ seconds: 600, solve }))
    expect(ample.ok && ample.value.cappedInstances).toBe(0)
  })
})
