import { describe, expect, it } from 'vitest'
import { calculate } from '@swardwright/engine'
import { originOf } from './origin.ts'

const input = { holeDiameterMm: 10, acrossMm: 50, alongMm: 50, passes: 1 }

describe('originOf', () => {
  it('shows the same answer that the calculation gives anywhere else', () => {
    const answer = calculate('tining.areaShare', input)
    const shown = Object.fromEntries(
      (originOf('tining.areaShare', input)?.outputs ?? []).map(({ field, value }) => [field, value]),
    )
    expect(answer.ok && answer.value).toEqual(shown)
  })

  it('names every input with its unit', () => {
    const hole = originOf('tining.areaShare', input)?.inputs.find(({ field }) => field === 'holeDiameterMm')
    expect(hole).toMatchObject({ unit: 'mm', value: 10 })
  })

  it('names the values inside lists by their place', () => {
    const layers = [{ fromMm: 0, toMm: 80, organicPercent: 4 }]
    const cores = { coreDiameterMm: 12, acrossMm: 50, alongMm: 50, depthMm: 70, layers, passes: 1 }
    expect(originOf('coring.removal', cores)?.inputs.map(({ field }) => field)).toContain(
      'layers[0].organicPercent',
    )
  })

  it('carries the error where there is no answer', () => {
    const origin = originOf('tining.areaShare', { ...input, holeDiameterMm: -1 })
    expect(origin?.error?.type).toBe('outOfRange')
    expect(origin?.outputs).toEqual([])
  })

  it('is nothing for a name that the catalogue does not have', () => {
    expect(originOf('no.such', {})).toBeNull()
  })
})
