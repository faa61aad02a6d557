import { describe, expect, it } from 'vitest'
import { MACHINE_TASKS, OPERATIONS } from '@swardwright/engine'
import { CAUTION_IDS, cautionsFor, CAUTIONS_BY_TASK, type CautionFacts } from './cautions.ts'

const facts = (changes: Partial<CautionFacts>): CautionFacts => ({
  operations: ['core'],
  deep: false,
  drySand: false,
  early: false,
  ...changes,
})
const ids = (changes: Partial<CautionFacts>): readonly string[] =>
  cautionsFor(facts(changes)).map(({ id }) => id)

describe('cautions', () => {
  it('stand once each, however many operations bring them', () => {
    const found = ids({ operations: ['core', 'scarify', 'dress', 'dragIn', 'load'] })
    expect(found).toEqual([...new Set(found)])
  })

  it('speak of buried services only where a deep tine goes in', () => {
    expect(ids({ deep: true })).toContain('services')
    expect(ids({ deep: false })).not.toContain('services')
    expect(ids({ operations: ['cut'], deep: true })).not.toContain('services')
  })

  it('speak of dust only where dry sand is handled', () => {
    expect(ids({ operations: ['load', 'dress'], drySand: true })).toContain('dust')
    expect(ids({ operations: ['dress'], drySand: false })).not.toContain('dust')
    expect(ids({ operations: ['core'], drySand: true })).not.toContain('dust')
  })

  it('name vibration and noise for the corer, the scarifier and the blower', () => {
    for (const operation of ['core', 'scarify', 'blow'] as const)
      expect(ids({ operations: [operation] })).toEqual(expect.arrayContaining(['vibration', 'noise']))
  })

  it('always tell whose word counts and where the advice comes from', () => {
    const all = cautionsFor({
      operations: [...OPERATIONS, ...MACHINE_TASKS],
      deep: true,
      drySand: true,
      early: true,
    })
    expect(all.map(({ id }) => id)).toEqual([...CAUTION_IDS])
    for (const caution of all)
      for (const text of [caution.title, caution.sentence, caution.defersTo, caution.source])
        expect(text.length).toBeGreaterThan(4)
  })

  it('have a row for every task a plan can hold', () => {
    expect(Object.keys(CAUTIONS_BY_TASK).sort()).toEqual([...OPERATIONS, ...MACHINE_TASKS].sort())
  })

  it('are silent for a post without work', () => {
    expect(ids({ operations: [] })).toEqual([])
  })
})
