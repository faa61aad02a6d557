import { expect, it } from 'vitest'
import { limitedGrowth } from './limited-growth.ts'

const AIR = { meanC: 20, season: 'cool' } as const

it('is the growth potential where neither water nor light is short', () => {
  expect(limitedGrowth(AIR, { moisture: 1, radiationMJPerM2: 20, shadeShare: 0 })).toEqual({
    temperature: 1,
    moisture: 1,
    light: 1,
    growth: 1,
  })
})

it('is held back by the scarcer of the two', () => {
  // 6 MJ/m2 times 0.45 times 4.57 mol/MJ is 12.34 mol/m2, of 25 wanted: 0.4936. By hand.
  expect(limitedGrowth(AIR, { moisture: 0.8, radiationMJPerM2: 6, shadeShare: 0 }).growth).toBeCloseTo(
    0.4936,
    4,
  )
  expect(limitedGrowth(AIR, { moisture: 0.3, radiationMJPerM2: 6, shadeShare: 0 }).growth).toBeCloseTo(
    0.3,
    10,
  )
  expect(limitedGrowth(AIR, { moisture: 1, radiationMJPerM2: 12, shadeShare: 0.5 }).light).toBeCloseTo(
    0.4936,
    4,
  )
})
