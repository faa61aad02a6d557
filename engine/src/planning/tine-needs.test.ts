import { expect, it } from 'vitest'
import { demoInput } from './testing/demo.ts'
import { tineNeeds } from './tine-needs.ts'

const { course, prescription } = demoInput()

it('adds up what a prescription wears, kind by kind: on greens of one size, greens over the life of a set', () => {
  const even = { ...course, greens: course.greens.map((green) => ({ ...green, areaM2: 500 })) }
  // The demo's prescription: three weak greens with 8 mm tines, sixteen with 10 mm, each set good for 12 greens.
  expect(tineNeeds(even, prescription)).toEqual(
    expect.arrayContaining([
      { holeDiameterMm: 10, coreDiameterMm: 8, greens: 16, sets: expect.closeTo(16 / 12, 9) as number },
      { holeDiameterMm: 8, coreDiameterMm: 6, greens: 3, sets: expect.closeTo(3 / 12, 9) as number },
    ]),
  )
})

it('wears a set of its own for each covering of a green', () => {
  const twice = {
    ...prescription,
    groups: prescription.groups.map((group) => ({
      ...group,
      chain: group.chain.map((step) => (step.tines === undefined ? step : { ...step, passes: 2 })),
    })),
  }
  const sum = (rows: ReturnType<typeof tineNeeds>): number => rows.reduce((all, { sets }) => all + sets, 0)
  expect(sum(tineNeeds(course, twice))).toBeCloseTo(2 * sum(tineNeeds(course, prescription)), 9)
})
