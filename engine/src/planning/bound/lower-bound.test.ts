import { describe, expect, it } from 'vitest'
import { handProblem } from './testing/hand-problem.ts'
import { lowerBound } from './lower-bound.ts'

const MANY = 9

describe('the bound, against problems worked by hand', () => {
  it('is the work of the one corer and the shortest tail after it', () => {
    // The corer begins at 08:00 (480). 40 + 30 + 20 minutes of coring: 570. The last green cored is rolled for 10 minutes: 580.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: [
        [40, 10],
        [30, 10],
        [20, 30],
      ],
      machines: [1, 3],
      people: MANY,
    })
    expect(lowerBound(problem)).toEqual({
      finishMin: 580,
      by: { part: 'bottleneck', resource: { kind: 'machines', machines: ['core-1'] }, workMin: 90 },
      unfinishedGreens: 0,
    })
  })

  it('counts the set-up, the way from the shed and the ways between greens', () => {
    // Set up 480 to 500, at the first green at 505, 90 minutes of coring and two ways of 2: 599. Rolled for 10: 609.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: [
        [40, 10],
        [30, 10],
        [20, 30],
      ],
      machines: [1, 3],
      people: MANY,
      setUpMin: 20,
      ways: { shed: 5, greens: 2 },
    })
    expect(lowerBound(problem).finishMin).toBe(609)
  })

  it('is the longest chain where nothing is scarce', () => {
    // 480 + 40 + 25.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: [
        [40, 25],
        [30, 10],
      ],
      machines: [2, 2],
      people: MANY,
    })
    expect(lowerBound(problem)).toEqual({
      finishMin: 545,
      by: { part: 'chain', green: 'g1' },
      unfinishedGreens: 0,
    })
  })

  it('shares the work among the people who can do it, and takes their breaks off', () => {
    // Three greens of 30 + 30 minutes for two people. Until the first is cored at 510 no other is opened, so one of the two stands idle for 30:
    // (180 + 30) / 2 = 105 after 480.
    const wish = {
      chain: ['core', 'roll'] as const,
      minutes: [
        [30, 30],
        [30, 30],
        [30, 30],
      ],
      machines: [3, 3],
      people: 2,
    }
    expect(lowerBound(handProblem(wish))).toMatchObject({
      finishMin: 585,
      by: { part: 'bottleneck', resource: { kind: 'people' }, workMin: 180 },
    })
    // With 20 minutes of break for each between 08:00 and 09:00, whoever is idle may rest then: (180 + 40) / 2 = 110 after 480, idle or not.
    const breaks = [{ window: { start: 480, end: 540 }, minutes: 20 }]
    expect(lowerBound(handProblem({ ...wish, breaks })).finishMin).toBe(590)
  })

  it('opens only as many greens before the rain as can be finished before it', () => {
    // Rain from 10:00 (600) on. Coring ends by 590, so that it is rolled by 600: 110 minutes, three greens of 30. The other two are cored on
    // the second day from 1920 to 1980 and rolled by 1990.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: Array.from({ length: 5 }, () => [30, 10]),
      machines: [1, 3],
      people: MANY,
      rain: [{ start: 600, end: 1440 }],
    })
    expect(lowerBound(problem)).toEqual({
      finishMin: 1990,
      by: { part: 'windows', greens: 5, mostByWindow: [3, 1] },
      unfinishedGreens: 0,
    })
  })

  it('says how many greens no plan can finish', () => {
    // Rain from 10:00 on, for good: three of the five.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: Array.from({ length: 5 }, () => [30, 10]),
      machines: [1, 3],
      people: MANY,
      rain: [{ start: 600, end: 2880 }],
    })
    expect(lowerBound(problem)).toMatchObject({ finishMin: null, unfinishedGreens: 2 })
    expect(lowerBound(problem, { greens: [0, 1, 2] }).finishMin).toBe(580)
  })

  it('lets one green after the other through the cap', () => {
    // One green in work at a time, 40 minutes each: 480 + 3 x 40.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: Array.from({ length: 3 }, () => [30, 10]),
      machines: [3, 3],
      people: MANY,
      cap: 1,
    })
    expect(lowerBound(problem)).toMatchObject({
      finishMin: 600,
      by: { part: 'openGreens', cap: 1, workMin: 120 },
    })
  })

  it('does not part a green between two lanes', () => {
    // Two greens in work at once, three of 40 minutes: one lane has two of them, 480 + 80, though the sum would be 60 a lane.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: Array.from({ length: 3 }, () => [30, 10]),
      machines: [3, 3],
      people: MANY,
      cap: 2,
    })
    expect(lowerBound(problem)).toMatchObject({ finishMin: 560, by: { part: 'openGreens', cap: 2 } })
  })

  it('fills with late sand what the early sand cannot fill, one load after the other', () => {
    // Two tonnes for four: after 700 the one dresser dresses two greens for 20 minutes each, and the last is dragged for 5.
    const problem = handProblem({
      chain: ['core', 'dress', 'dragIn'],
      minutes: Array.from({ length: 4 }, () => [10, 20, 5]),
      machines: [1, 1, 1],
      people: MANY,
      stockT: 2,
      deliveries: [{ atMin: 700, massT: 5 }],
    })
    expect(lowerBound(problem)).toMatchObject({ finishMin: 745, by: { part: 'sand', kind: 'damp' } })
  })

  it('waits for the last sand', () => {
    // One tonne for two: the second green is dressed from 700 on for 20 minutes and dragged for 5.
    const problem = handProblem({
      chain: ['core', 'dress', 'dragIn'],
      minutes: [
        [10, 20, 5],
        [10, 20, 5],
      ],
      machines: [1, 1, 1],
      people: MANY,
      stockT: 1,
      deliveries: [{ atMin: 700, massT: 5 }],
    })
    expect(lowerBound(problem)).toMatchObject({ finishMin: 725, by: { part: 'sand', kind: 'damp' } })
  })

  it('holds to what stands: now, what is done, and what is pinned', () => {
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: [
        [40, 10],
        [30, 10],
      ],
      machines: [1, 2],
      people: MANY,
    })
    const core = {
      kind: 'core' as const,
      green: 0,
      pass: 1,
      load: null,
      machine: 0,
      people: [0],
      startMin: 500,
      finishMin: 545,
    }
    // At 09:00 (540) the first green is being cored until 545; the second is cored from 540 at the soonest and rolled by 580.
    const committed = { nowMin: 540, tasks: [core], pins: [] }
    expect(lowerBound({ ...problem, committed }).finishMin).toBe(580)
    // Pinned to the second day, it is opened at 1920 (08:00) at the soonest.
    const pins = [{ kind: 'green' as const, green: 1, day: 1, openMin: null }]
    expect(lowerBound({ ...problem, committed: { ...committed, pins } }).finishMin).toBe(1960)
  })

  it('keeps a green out of its fixtures only where that is asked for', () => {
    const plain = handProblem({ chain: ['core', 'roll'], minutes: [[40, 10]], machines: [1, 1], people: 2 })
    const greens = plain.greens.map((green) => ({ ...green, fixtures: [{ start: 500, end: 700 }] }))
    const problem = { ...plain, greens }
    expect(lowerBound(problem).finishMin).toBe(530)
    // 480 to 500 is too short for 50 minutes of work: from 700 on.
    expect(lowerBound(problem, { keepFixtures: true }).finishMin).toBe(750)
  })
})
