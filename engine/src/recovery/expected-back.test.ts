import { describe, expect, it } from 'vitest'
import type { PrescriptionGroup } from '../planning/prescription.ts'
import type { WeatherHours } from '../weather/hours.ts'
import { expectedBack } from './expected-back.ts'

const tines = {
  holeDiameterMm: 13,
  coreDiameterMm: 10,
  acrossMm: 50,
  alongMm: 50,
  depthMm: 75,
  setLifeGreens: 12,
}
const blades = { bladeWidthMm: 2, bladeSpacingMm: 40, depthMm: 8 }

const groupWith = (chain: PrescriptionGroup['chain']): PrescriptionGroup => ({
  id: 'g',
  name: 'all',
  greens: 'all',
  cores: 'lift',
  workedBackShare: 0,
  sand: {
    kind: 'damp',
    surfaceMm: 1,
    fillFactor: 0.85,
    lossPercent: 3,
    bulkDensityKgPerM3: 1500,
    moisturePercent: 5,
  },
  chain,
})

type Step = PrescriptionGroup['chain'][number]
const core: Step = { operation: 'core', passes: 1, effects: ['opens'], tines }
const scarify: Step = { operation: 'scarify', passes: 2, effects: ['opens'], blades }

/** Hours of one temperature from 11 August 2026, 00:00 UTC. */
const steady = (temperatureC: number, hours: number): WeatherHours => {
  const column = (value: number) => new Float64Array(hours).fill(value)
  return {
    startMs: Date.UTC(2026, 7, 11),
    hours,
    members: 1,
    rainMm: column(0),
    temperatureC: column(temperatureC),
    dewPointC: column(10),
    windMPerS: column(2),
    gustMPerS: column(4),
    radiationWPerM2: column(200),
  }
}

const finished = { finished: '2026-08-11', timeZone: 'UTC' } as const

describe('expectedBack', () => {
  it('goes by the holes alone where nothing was scarified: 13 mm at 20 C', () => {
    // By hand, GP 1: 6.5 mm / (0.6 x 1.35) = 8.02, so 9 days; 6.5 / (0.6 x 0.65) = 16.67, so 17 days. Rates: recovery.closure.
    const back = expectedBack({ group: groupWith([core]), weather: steady(20, 20 * 24), ...finished })
    expect(back).toEqual({ from: '2026-08-20', to: '2026-08-28', by: 'closure' })
  })

  it('goes by the grooves where they are slower: 2 mm blades at 20 C', () => {
    // By hand: 1 mm / (0.0708661 x 1.35) = 10.45, so 11 days; 1 / (0.0708661 x 0.65) = 21.71, so 22 days.
    const back = expectedBack({
      group: groupWith([core, scarify]),
      weather: steady(20, 40 * 24),
      ...finished,
    })
    expect(back).toEqual({ from: '2026-08-22', to: '2026-09-02', by: 'closure' })
  })

  it('takes the days beyond the forecast to be as warm as the forecast: three days of 15 C', () => {
    // GP cool at 15 C = exp(-0.5 (5/5.5)^2) = 0.6615, its root 0.8133: 8.02 / 0.8133 = 9.87, so 10; 16.67 / 0.8133 = 20.5, so 21.
    const back = expectedBack({ group: groupWith([core]), weather: steady(15, 3 * 24), ...finished })
    expect(back).toEqual({ from: '2026-08-21', to: '2026-09-01', by: 'closure' })
  })

  it('names no last day where the grass hardly grows', () => {
    const back = expectedBack({ group: groupWith([core]), weather: steady(2, 24), ...finished })
    expect(back?.to).toBeNull()
  })

  it('goes by common practice, one to two weeks, where no weather is known', () => {
    const back = expectedBack({ group: groupWith([core]), weather: null, ...finished })
    expect(back).toEqual({ from: '2026-08-18', to: '2026-08-25', by: 'usual' })
  })

  it('says nothing of a green that was only dressed: it was never away', () => {
    const dress: Step = { operation: 'dress', passes: 1, effects: ['finishes'] }
    expect(expectedBack({ group: groupWith([dress]), weather: null, ...finished })).toBeNull()
  })
})
