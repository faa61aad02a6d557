import { describe, expect, it } from 'vitest'
import type { Prescription } from '@swardwright/engine'
import { greensOf, withAdded, withGroup, withMoved, withoutStep, withStep } from './edit.ts'

const usual: Prescription['groups'][number] = {
  id: 'usual',
  name: 'All greens',
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
  chain: [
    { operation: 'core', passes: 1, effects: ['opens'] },
    { operation: 'scarify', passes: 2, effects: [] },
    { operation: 'dress', passes: 1, effects: ['clears', 'dresses'] },
    { operation: 'dragIn', passes: 2, effects: ['finishes'] },
  ],
}

const operations = (group: typeof usual) => group.chain.map((step) => step.operation)

describe('editing a chain', () => {
  it('moves a step up and leaves the first where it is', () => {
    expect(operations(withMoved(usual, 1, -1)).slice(0, 2)).toEqual(['scarify', 'core'])
    expect(withMoved(usual, 0, -1)).toBe(usual)
  })

  it('never takes out the last step', () => {
    const one = { ...usual, chain: usual.chain.slice(0, 1) }
    expect(withoutStep(one, 0)).toBe(one)
    expect(withoutStep(usual, 0).chain).toHaveLength(usual.chain.length - 1)
  })

  it('adds coring with both diameters and solid tines without a core', () => {
    expect(withAdded(usual, 'core').chain.at(-1)?.tines?.coreDiameterMm).toBeGreaterThan(0)
    expect(withAdded(usual, 'solidTine').chain.at(-1)?.tines?.coreDiameterMm).toBe(0)
  })

  it('changes one step and no other', () => {
    const changed = withStep(usual, 0, (step) => ({ ...step, passes: 3 }))
    expect(changed.chain.map((step) => step.passes)).toEqual([
      3,
      ...usual.chain.slice(1).map((step) => step.passes),
    ])
  })
})

describe('groups', () => {
  const weak = { ...usual, id: 'weak', greens: ['b'] }
  const both = { version: 1 as const, name: 'Renovation', groups: [usual, weak] }

  it('gives a green to the group that names it even where the group for all stands first', () => {
    expect(greensOf(both, usual, ['a', 'b', 'c'])).toEqual(['a', 'c'])
    expect(greensOf(both, weak, ['a', 'b', 'c'])).toEqual(['b'])
  })

  it('changes the group of that id alone', () => {
    const changed = withGroup(both, 'weak', (group) => ({ ...group, name: 'Shaded' }))
    expect(changed.groups.map((group) => group.name)).toEqual(['All greens', 'Shaded'])
  })
})
