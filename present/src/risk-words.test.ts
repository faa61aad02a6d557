import { describe, expect, it } from 'vitest'
import type { PlanRisk } from '@swardwright/engine'
import { partsOf } from './drawing.ts'
import { riskCurve } from './risk-curve.ts'
import { chanceWords, dayAgainstLevel, dayRiskSentence } from './risk-words.ts'

const DAY: PlanRisk['days'][number] = {
  date: '2026-08-10',
  planned: 2,
  chance: 0.28,
  standardError: 0.02,
  lastSafeStart: '2026-08-10T07:03:00+01:00',
  curve: [
    { green: 'g1', opens: '2026-08-10T07:03:00+01:00', chance: 0.01 },
    { green: 'g2', opens: '2026-08-10T08:15:00+01:00', chance: 0.28 },
    { green: 'g2', opens: '2026-08-10T08:30:00+01:00', chance: 0.4 },
  ],
  opened: { plain: 2, safe: 1 },
  finished: { plain: 1.7, safe: 1 },
}
const RISK: PlanRisk = { level: 0.05, draws: 400, source: 'spread', days: [DAY], uses: [] }

describe('the chance of a caught green in words', () => {
  it('never claims to know small or great chances to the percent', () => {
    expect([0, 0.004, 0.05, 0.276, 0.996, 1].map(chanceWords)).toEqual([
      '0 %',
      'under 1 %',
      '5 %',
      '28 %',
      'over 99 %',
      '100 %',
    ])
  })

  it('says what keeps a risky day under the level, or that nothing does', () => {
    expect(dayRiskSentence(DAY, RISK, 'Europe/London')).toBe(
      'Mon 10 Aug: 2 greens; the chance that one is caught is 28 %; with none opened after 07:03 it stays under 5 %',
    )
    expect(dayRiskSentence({ ...DAY, lastSafeStart: null }, RISK, 'Europe/London')).toMatch(
      /even the first one is over 5 %$/u,
    )
    expect(dayRiskSentence({ ...DAY, chance: 0.03 }, RISK, 'Europe/London')).toBe(
      'Mon 10 Aug: 2 greens; the chance that one is caught is 3 %',
    )
  })
})

describe('the day at hand beside the level', () => {
  const told = (change: Partial<typeof DAY>, level = 0.05) =>
    dayAgainstLevel({ ...DAY, ...change }, { ...RISK, level }, 'Europe/London')

  it('says in a word whether it is over, and what would keep it under', () => {
    expect(told({ chance: 0.31 })).toBe(
      'Chance of a caught green 31 %, over the level of 5 %; with none opened after 07:03 it stays under 5 %',
    )
    expect(told({ lastSafeStart: null })).toBe(
      'Chance of a caught green 28 %, over the level of 5 %; even the first one is over 5 %',
    )
  })

  it('asks for nothing up to the level itself', () => {
    expect(told({ chance: 0.05 })).toBe('Chance of a caught green 5 %, within the level of 5 %')
    expect(told({ chance: 0.001 })).toBe('Chance of a caught green under 1 %, within the level of 5 %')
  })

  it('tells a level as it was set, under one percent too', () => {
    expect(told({}, 0.005)).toMatch(/over the level of 0\.5 %; .* stays under 0\.5 %$/u)
  })
})

describe('the curve of risk', () => {
  const input = {
    day: DAY,
    level: 0.05,
    timeZone: 'Europe/London',
    widthPx: 358,
    greenNames: new Map([['g1', '1 First']]),
  }

  it('marks each planned opening by name, and the last safe start', () => {
    const drawn = riskCurve(input)
    const labels = partsOf(drawn, 'opening').map(({ attributes }) => attributes['aria-label'])
    expect(labels).toEqual(['1 First opened 07:03: 1 %', 'g2 opened 08:15: 28 %'])
    expect(partsOf(drawn, 'flag').map(({ attributes }) => attributes['aria-label'])).toEqual([
      '07:03 last safe start',
    ])
  })

  it('draws no rule where the whole day is under the level', () => {
    expect(partsOf(riskCurve({ ...input, day: { ...DAY, chance: 0.04 } }), 'flag')).toEqual([])
  })
})
