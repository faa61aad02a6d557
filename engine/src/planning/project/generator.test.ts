import { describe, expect, it } from 'vitest'
import { draftOf, generatorOf, GIVEN_UP } from './generator.ts'
import { projectFrom } from './lags/testing/tiny-project.ts'
import { networkOf } from './network.ts'

// One resource of 2 units. 1: 3 long, 1 unit. 2: 2 long, 2 units. 3: 2 long, 1 unit. 4: 1 long, 1 unit, after 3.
const network = networkOf(
  projectFrom({
    durations: [0, 3, 2, 2, 1, 0],
    capacities: [2],
    demands: [[0], [1], [2], [1], [1], [0]],
    lags: [
      [0, 1, 0],
      [0, 2, 0],
      [0, 3, 0],
      [3, 4, 2],
      [1, 5, 3],
      [2, 5, 2],
      [4, 5, 1],
    ],
  }),
)
if (network === null) throw new Error('the project is plain')
const generator = generatorOf(network)

const drafted = (...order: readonly number[]) => {
  const draft = draftOf(network.count)
  draft.order.set(order)
  return draft
}

describe('serial schedule generation', () => {
  it('places each activity at its first chance, in the order given', () => {
    // 1 at 0 to 3; 2 needs both units: 3 to 5; 3 beside 1: 0 to 2; 4 after 3 beside 1: 2 to 3.
    const draft = drafted(0, 1, 2, 3, 4, 5)
    expect(generator.build(draft, 0, GIVEN_UP)).toBe(6)
    expect([...draft.starts]).toEqual([0, 0, 3, 0, 2, 5])
    expect(draft.makespan).toBe(5)
  })

  it('builds again only what comes after a position', () => {
    const draft = drafted(0, 2, 1, 3, 4, 5)
    // 2 held at 1 to 3 by hand; then 1 at 3 to 6, 3 at 3 to 5, 4 at 5 to 6.
    draft.starts[2] = 1
    expect(generator.build(draft, 2, GIVEN_UP)).toBe(4)
    expect([...draft.starts]).toEqual([0, 3, 1, 3, 5, 6])
  })

  it('gives up at the first activity that shows the end to come too late', () => {
    // 2 at 0 to 2, then 3 at 2 with its tail 2 + 1: the end comes at 5, one after the limit.
    const draft = drafted(0, 2, 3, 1, 4, 5)
    expect(generator.build(draft, 0, 4)).toBe(3)
    expect(draft.makespan).toBe(GIVEN_UP)
  })

  it('turns time round: last finish first', () => {
    const draft = drafted(0, 1, 2, 3, 4, 5)
    generator.build(draft, 0, GIVEN_UP)
    const turned = draftOf(network.count)
    generator.turn(draft, turned)
    // Finishes: 5 (activity 5), 5 (2), 3 (4), 3 (1), 2 (3), 0 (0); among equals the higher number first.
    expect([...turned.order]).toEqual([5, 2, 4, 1, 3, 0])
    expect(turned.backward).toBe(true)
    // Backward: 2 at 0 to 2, 4 at 2 to 3, 1 at 2 to 5, 3 after 4 beside 1 at 3 to 5.
    generator.build(turned, 0, GIVEN_UP)
    expect([...turned.starts]).toEqual([5, 2, 0, 3, 2, 0])
    expect(turned.makespan).toBe(5)
  })

  it('sorts a draft by its own starts', () => {
    const draft = drafted(0, 1, 2, 3, 4, 5)
    generator.build(draft, 0, GIVEN_UP)
    generator.sort(draft, draft)
    expect([...draft.order]).toEqual([0, 1, 3, 4, 2, 5])
  })
})
