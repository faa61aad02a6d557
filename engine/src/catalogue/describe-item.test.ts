import { describe, expect, it } from 'vitest'
import { CATALOGUE, findItem } from './catalogue.ts'
import { describeItem } from './describe-item.ts'

const described = (name: string) => {
  const found = findItem(name)
  if (found === undefined) throw new Error(`no item ${name}`)
  return describeItem(found)
}

describe('the description of an item', () => {
  it('gives each number its meaning, unit, range and symbol', () => {
    expect(described('tining.areaShare').inputs[0]).toEqual({
      field: 'holeDiameterMm',
      meaning: 'Diameter of the hole: the outside of the tine',
      unit: 'mm',
      min: 1,
      max: 100,
      symbol: 'd',
      optional: false,
      default: null,
      choices: null,
    })
  })

  it('reaches into nested objects and lists and keeps them optional below an optional one', () => {
    const fields = described('sand.need').inputs
    const of = (field: string) => fields.find((f) => f.field === field)
    expect(of('hole.coreDiameterMm')?.optional).toBe(false)
    expect(of('grooves.bladeWidthMm')?.optional).toBe(true)
    expect(of('fillFactor')?.default).toBe(0.85)
    expect(described('organic.profileTotals').inputs.map((f) => f.field)).toEqual([
      'layers[].fromMm',
      'layers[].toMm',
      'layers[].organicPercent',
    ])
  })

  it('lists the words of a choice', () => {
    expect(described('growth.potential').inputs.find((f) => f.field === 'season')?.choices).toEqual([
      'cool',
      'warm',
    ])
  })

  it('writes every source out', () => {
    expect(described('sand.bulking').sources[0]?.text).toBe(
      'Civil-engineering notes (n.d.): Bulking of sand. theconstructioncivil.org.',
    )
  })
})

describe.each(CATALOGUE.map((item) => [item.name, item] as const))('the description of %s', (_name, item) => {
  const description = describeItem(item)

  it('is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(description))).toEqual(description)
  })

  it('says what every field means', () => {
    const silent = [...description.inputs, ...description.outputs].filter((f) => f.meaning === '')
    expect(silent.map((f) => f.field)).toEqual([])
  })
})
