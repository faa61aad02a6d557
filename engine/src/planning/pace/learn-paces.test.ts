import { describe, expect, it } from 'vitest'
import { learnPaces, type TimedCovering } from './learn-paces.ts'

const cored = (plannedMin: number, takenMin: number, machine = 'corer'): TimedCovering => ({
  machine,
  operation: 'core',
  plannedMin,
  takenMin,
})

describe('paces of the day', () => {
  it('are the planned minutes until something was timed', () => {
    expect(learnPaces([])).toEqual([])
  })

  it('go halfway with the first covering that is as long as the prior weighs', () => {
    // By hand: (30 + 60) / (30 + 30) = 1.5
    expect(learnPaces([cored(30, 60)])[0]?.ratio).toBeCloseTo(1.5, 12)
  })

  it('follow the day more closely the more is timed', () => {
    // By hand: (30 + 3 x 40) / (30 + 3 x 30) = 150 / 120 = 1.25; and of 20: (30 + 800) / (30 + 600) = 1.317...
    expect(learnPaces([cored(30, 40), cored(30, 40), cored(30, 40)])[0]?.ratio).toBeCloseTo(1.25, 12)
    const many = Array.from({ length: 20 }, () => cored(30, 40))
    expect(learnPaces(many)[0]?.ratio).toBeCloseTo(830 / 630, 12)
  })

  it('stand per machine and operation, in a fixed order, whatever the order of the timings', () => {
    const timed = [
      cored(30, 45, 'b'),
      { ...cored(20, 10, 'a'), operation: 'solidTine' as const },
      cored(30, 30, 'a'),
    ]
    const keys = learnPaces(timed).map(({ machine, operation }) => `${machine} ${operation}`)
    expect(keys).toEqual(['a core', 'a solidTine', 'b core'])
    expect(learnPaces([...timed].reverse())).toEqual(learnPaces(timed))
  })

  it('do not believe a tap forgotten until the evening', () => {
    // By hand: 600 minutes for 30 planned are cut to 4 x 30 = 120: (30 + 120) / 60 = 2.5
    expect(learnPaces([cored(30, 600)])[0]?.ratio).toBeCloseTo(2.5, 12)
  })

  it('narrow their range with every covering', () => {
    const width = (count: number): number => {
      const [pace] = learnPaces(Array.from({ length: count }, () => cored(30, 30)))
      return (pace?.high ?? 0) - (pace?.low ?? 0)
    }
    expect(width(1)).toBeGreaterThan(width(4))
    // By hand: after one covering of 30 the weight is 60: 2 x 1.2816 x 0.25 x sqrt(30 / 60) = 0.4531
    expect(width(1)).toBeCloseTo(0.4531, 4)
  })
})
