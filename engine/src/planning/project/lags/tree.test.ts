import { describe, expect, it } from 'vitest'
import { randomOf, type Random } from '../../search/random.ts'
import { NOGOOD_HEAD } from './nogoods.ts'
import { latestEndOf, rootOf, type Root } from './root.ts'
import { eachSchedule, tinyProject } from './testing/tiny-project.ts'
import { climbTo, descend, learnFromClash, propagate } from './tree.ts'

/** Random decisions until everything is decided or the tree is closed; every clash is learnt from. Calls `at` at each clean node. */
const wander = (root: Root, random: Random, clashes: number, at: () => void): void => {
  const { tree } = root
  const { bounds } = tree
  for (let clash = 0; clash < clashes;) {
    if (!propagate(tree)) {
      clash++
      if (!learnFromClash(tree, clash, () => {})) return
      continue
    }
    at()
    const open = [...bounds.value.keys()].filter((side) => bounds.value[side]! < -bounds.value[side ^ 1]!)
    const side = open[random.below(open.length)]
    if (side === undefined) {
      if (bounds.level === 0) return
      climbTo(tree, random.below(bounds.level))
      clash++
      continue
    }
    const room = -bounds.value[side ^ 1]! - bounds.value[side]!
    descend(tree, side, bounds.value[side]! + 1 + random.below(room))
  }
}

/** Whether a schedule makes a fact true. Variables after the starts are orders: 1 = first before second. */
const isTrue = ({ tree, pairs }: Root, starts: readonly number[], side: number, least: number): boolean => {
  const variable = side >> 1
  const pair = variable - tree.bounds.activities
  const value =
    pair < 0 ? starts[variable]! : starts[pairs.first[pair]!]! < starts[pairs.second[pair]!]! ? 1 : 0
  return (side % 2 === 0 ? value : -value) >= least
}

describe('tree', () => {
  it('learns no nogood, and settles no bound, that a schedule contradicts: all schedules of 100 tiny projects listed', () => {
    const random = randomOf(21)
    let learnt = 0
    for (let trial = 0; trial < 100; trial++) {
      const project = tinyProject(random)
      const root = rootOf(project)
      if (root === null) continue
      const latest = latestEndOf(project)
      const schedules: number[][] = []
      eachSchedule(project, Math.min(latest, 9), (starts) => {
        const end = Math.max(...starts.map((start, a) => start + project.durations[a]!))
        if (end <= latest) schedules.push([...starts, end])
      })
      wander(root, random, 60, () => {})
      const { bounds, nogoods } = root.tree
      const facts: [number, number][][] = []
      for (let at = 0; at < nogoods.size; at += NOGOOD_HEAD + 2 * nogoods.data[at]!)
        facts.push(
          Array.from({ length: nogoods.data[at]! }, (_, fact): [number, number] => [
            nogoods.data[at + NOGOOD_HEAD + 2 * fact]!,
            nogoods.data[at + NOGOOD_HEAD + 2 * fact + 1]!,
          ]),
        )
      learnt += facts.length
      climbTo(root.tree, 0)
      const contradicted = schedules.filter(
        (starts) =>
          facts.some((set) => set.every(([side, least]) => isTrue(root, starts, side, least))) ||
          bounds.value.some((least, side) => !isTrue(root, starts, side, least)),
      )
      expect(contradicted, `seed 21, trial ${trial}`).toEqual([])
    }
    expect(learnt).toBeGreaterThan(200)
  })

  it('holds at every node the load that the sure parts of its bounds make up, also after many ways back', () => {
    const random = randomOf(22)
    let nodes = 0
    const wrong: number[] = []
    for (let trial = 0; trial < 40; trial++) {
      const root = rootOf(tinyProject(random))
      if (root === null) continue
      const { bounds, profile } = root.tree
      const { durations, demands, capacities } = profile.project
      wander(root, random, 40, () => {
        const load = new Int32Array(profile.load.length)
        for (let a = 0; a < durations.length; a++)
          for (let time = -bounds.value[2 * a + 1]!; time < bounds.value[2 * a]! + durations[a]!; time++)
            for (let r = 0; r < capacities.length; r++)
              load[time * capacities.length + r]! += demands[a * capacities.length + r]!
        if (load.some((units, cell) => units !== profile.load[cell])) wrong.push(trial)
        nodes++
      })
    }
    expect(wrong).toEqual([])
    expect(nodes).toBeGreaterThan(500)
  })
})
