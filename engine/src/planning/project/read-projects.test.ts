import { describe, expect, it } from 'vitest'
import { readProjects } from './read-projects.ts'
import { solveProject } from './solve-project.ts'

const PLAIN = {
  capacities: [2],
  durations: [0, 3, 2, 0],
  demands: [[0], [1], [2], [0]],
  successors: [[1, 2], [3], [3], []],
  bestKnown: 5,
}

const errorOf = (instance: unknown) => {
  const read = readProjects({ set: 'own', instances: { a: instance } })
  return read.ok ? null : read.error
}

describe('reading projects', () => {
  it('takes successors as lags of the whole duration', () => {
    const read = readProjects({ set: 'own', instances: { a: PLAIN } })
    if (!read.ok) throw new Error(read.error.at)
    const { set, instances } = read.value
    const [a] = instances
    if (a === undefined) throw new Error('one project was given')
    expect([set, a.name, a.bestKnown, a.project.hasMaxLags]).toEqual(['own', 'a', 5, false])
    expect([...a.project.lagFrom]).toEqual([0, 0, 1, 2])
    expect([...a.project.lagTo]).toEqual([1, 2, 3, 3])
    expect([...a.project.lagMin]).toEqual([0, 0, 3, 2])
    expect([...a.project.demands]).toEqual([0, 1, 2, 0])
  })

  it('takes lags as they are, and knows a maximum lag by its sign', () => {
    const { successors: _, bestKnown: __, ...rest } = PLAIN
    const read = readProjects({
      set: 'own',
      instances: {
        a: {
          ...rest,
          lags: [
            [0, 1, 0],
            [1, 2, 4],
            [2, 1, -6],
            [2, 3, 2],
          ],
        },
      },
    })
    if (!read.ok) throw new Error(read.error.at)
    expect(read.value.instances[0]?.project.hasMaxLags).toBe(true)
    expect(read.value.instances[0]?.bestKnown).toBeNull()
    expect([...(read.value.instances[0]?.project.lagMin ?? [])]).toEqual([0, 4, -6, 2])
  })

  it('says where a figure is wrong, what may stand there and what does', () => {
    expect(errorOf({ ...PLAIN, durations: [0, 3, -2, 0] })).toEqual({
      at: 'instances.a.durations[2]',
      expected: 'a whole number from 0 to 1000000',
      found: '-2',
    })
    expect(errorOf({ ...PLAIN, durations: [0, 3, 2.5, 0] })?.at).toBe('instances.a.durations[2]')
    expect(errorOf({ ...PLAIN, successors: [[1, 2], [4], [3], []] })).toEqual({
      at: 'instances.a.successors[1][0]',
      expected: 'a whole number from 0 to 3',
      found: '4',
    })
  })

  it('takes a demand that no capacity can ever meet: the search proves that there is no schedule', () => {
    const read = readProjects({ set: 'own', instances: { a: { ...PLAIN, demands: [[0], [1], [3], [0]] } } })
    const project = read.ok ? read.value.instances[0]?.project : undefined
    if (project === undefined) throw new Error('it reads')
    expect([...project.demands]).toEqual([0, 1, 3, 0])
    expect(solveProject(project, { schedules: 10, seed: 1 })).toMatchObject({
      starts: null,
      infeasibleProven: true,
    })
  })

  it('refuses lists of the wrong length and files without projects', () => {
    expect(errorOf({ ...PLAIN, demands: [[0], [1], [2]] })?.at).toBe('instances.a.demands')
    expect(errorOf({ ...PLAIN, successors: undefined })?.at).toBe('instances.a.successors')
    const read = readProjects({ set: 'own' })
    expect(read.ok ? null : read.error).toEqual({ at: 'instances', expected: 'an object', found: 'nothing' })
  })
})
