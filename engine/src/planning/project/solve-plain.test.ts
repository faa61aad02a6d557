import { describe, expect, it } from 'vitest'
import { randomOf, type Random } from '../search/random.ts'
import { checkProject, makespanOf } from './check-project.ts'
import { earliestStarts } from './critical-path.ts'
import { eachSchedule, projectFrom } from './lags/testing/tiny-project.ts'
import { lowerBoundOf } from './lower-bound.ts'
import { isPlain, networkOf, type Network } from './network.ts'
import type { Project } from './project.ts'
import { solvePlain } from './solve-plain.ts'
import { solveProject } from './solve-project.ts'
import { publishedProjects } from './testing/published.ts'

const networkFor = (project: Project): Network => {
  const network = networkOf(project)
  if (network === null) throw new Error('a plain project was expected')
  return network
}

/** Up to five short activities that wait for each other's finish, on two scarce resources. */
const tinyPlain = (random: Random): Project => {
  const real = 3 + random.below(3)
  const last = real + 1
  const durations = Array.from({ length: real + 2 }, (_, a) =>
    a === 0 || a === last ? 0 : 1 + random.below(3),
  )
  const demands = durations.map((duration) => (duration === 0 ? [0, 0] : [random.below(4), random.below(3)]))
  const lags: [number, number, number][] = []
  for (let a = 1; a < last; a++) {
    lags.push([0, a, 0], [a, last, durations[a] ?? 0])
    for (let b = a + 1; b < last; b++) if (random.below(4) === 0) lags.push([a, b, durations[a] ?? 0])
  }
  return projectFrom({ durations, demands, lags, capacities: [3, 2] })
}

/** Shortest makespan by listing every vector of starts. */
const shortest = (project: Project): number => {
  const latest = project.durations.reduce((sum, duration) => sum + duration, 0)
  let best = latest
  eachSchedule(project, latest, (starts) => {
    best = Math.min(best, makespanOf(project, starts))
  })
  return best
}

describe('the search of projects without maximum lags', () => {
  it('finds the shortest of all schedules on tiny projects, under a bound that never lies', () => {
    const random = randomOf(20)
    for (let draw = 0; draw < 60; draw++) {
      const project = tinyPlain(random)
      const optimum = shortest(project)
      const { starts, makespan } = solvePlain(networkFor(project), { schedules: 300, seed: draw })
      expect(lowerBoundOf(networkFor(project)), `draw ${draw}`).toBeLessThanOrEqual(optimum)
      expect(makespan, `draw ${draw}`).toBe(optimum)
      expect(checkProject(project, starts ?? new Int32Array(0)), `draw ${draw}`).toEqual([])
    }
  })

  // The longest makespan that counts as found, over the published optimum. j3029_1 is among the hardest of its set: one unit more is let through.
  const SLACK: Readonly<Record<string, number>> = { j301_1: 0, j3013_1: 0, j3029_1: 1 }

  it.each(publishedProjects())('meets the published optimum of $name', ({ name, project, bestKnown }) => {
    const { starts, makespan, schedules } = solveProject(project, { schedules: 50_000, seed: 1 })
    const optimum = bestKnown ?? 0
    expect(checkProject(project, starts ?? new Int32Array(0))).toEqual([])
    expect(makespan).toBe(makespanOf(project, starts ?? new Int32Array(0)))
    expect(makespan).toBeGreaterThanOrEqual(optimum)
    expect(makespan).toBeLessThanOrEqual(optimum + (SLACK[name] ?? 0))
    // A child is built to its end before the budget is asked again: two schedules at most.
    expect(schedules).toBeLessThanOrEqual(50_002)
    expect(lowerBoundOf(networkFor(project))).toBeLessThanOrEqual(optimum)
  })

  it('gives the same starts for the same seed and count, and may give others for another seed', () => {
    const [first] = publishedProjects()
    if (first === undefined) throw new Error('there are published projects')
    const startsOf = (seed: number): string =>
      String(solveProject(first.project, { schedules: 400, seed }).starts)
    expect(startsOf(5)).toBe(startsOf(5))
    expect(new Set([1, 2, 3, 4, 5].map(startsOf)).size).toBeGreaterThan(1)
  })

  it('gives a schedule even when it may spend one only, or is asked to stop at once', () => {
    for (const { project } of publishedProjects()) {
      const once = solveProject(project, { schedules: 1, seed: 1 })
      const stopped = solveProject(project, { schedules: 1000, seed: 1, stop: () => true })
      expect(checkProject(project, once.starts ?? new Int32Array(0))).toEqual([])
      expect(checkProject(project, stopped.starts ?? new Int32Array(0))).toEqual([])
      expect(stopped.schedules).toBeLessThanOrEqual(3)
    }
  })

  it('gives the same schedule when all units count a thousandfold, so that resources no longer fit one word', () => {
    for (const { project } of publishedProjects()) {
      const large: Project = {
        ...project,
        capacities: project.capacities.map((units) => units * 1000),
        demands: project.demands.map((units) => units * 1000),
      }
      expect(networkFor(project).words).toBe(1)
      expect(networkFor(large).words).toBeGreaterThan(1)
      const search = { schedules: 300, seed: 9 }
      expect(solveProject(large, search)).toEqual(solveProject(project, search))
    }
  })

  it('keeps a lag that is longer than the duration before it', () => {
    // One activity of 2, then a wait of 5 from its start, then one of 3: 5 + 3 = 8.
    const project = projectFrom({
      durations: [0, 2, 3, 0],
      capacities: [1],
      demands: [[0], [1], [1], [0]],
      lags: [
        [0, 1, 0],
        [1, 2, 5],
        [2, 3, 3],
      ],
    })
    expect(solveProject(project, { schedules: 50, seed: 1 })).toMatchObject({ makespan: 8 })
    expect([...(earliestStarts(project) ?? [])]).toEqual([0, 0, 5, 8])
  })
})

describe('what a project is searched by', () => {
  const two = (lags: readonly (readonly [number, number, number])[]): Project =>
    projectFrom({ durations: [0, 2, 3, 0], capacities: [1], demands: [[0], [1], [1], [0]], lags })

  it('is plain when activities only wait for finishes', () => {
    expect(isPlain(two([[1, 2, 2]]))).toBe(true)
  })

  it('is not plain with a maximum lag, an overlap, or a circle', () => {
    expect(isPlain(two([[1, 2, 2], [2, 1, -4]]))).toBe(false) // prettier-ignore
    expect(isPlain(two([[1, 2, 1]]))).toBe(false)
    expect(isPlain(two([[1, 2, 2], [2, 1, 3]]))).toBe(false) // prettier-ignore
  })

  it('has no earliest starts when its lags contradict each other', () => {
    expect(earliestStarts(two([[1, 2, 2], [2, 1, -1]]))).toBeNull() // prettier-ignore
  })
})
