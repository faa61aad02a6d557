import { describe, expect, it } from 'vitest'
import { plan } from './fixtures/two-greens.ts'
import { comparePlans } from './plan-compare.ts'

describe('two plans side by side', () => {
  const early = { ...plan, objective: { ...plan.objective, finish: '2026-08-12T14:00:00+01:00' } }
  const later = {
    ...plan,
    objective: {
      ...plan.objective,
      unfinishedGreens: plan.objective.unfinishedGreens + 1,
      finish: '2026-08-12T15:30:00+01:00',
    },
  }

  it('says in which of what plans are judged by the newer one is better or worse, in that order', () => {
    const rows = comparePlans(early, later, 'Europe/London')
    expect(rows.map(({ what }) => what)).toEqual([
      'greens left out',
      'clashes with fixtures',
      'shut green-days',
      'last finish',
      'overtime',
      'driving between places',
    ])
    expect(rows[0]?.change).toBe('worse')
    expect(rows[3]).toMatchObject({ now: 'Wed 12 Aug 15:30', change: 'worse' })
    expect(rows[5]?.change).toBe('same')
  })

  it('calls an earlier finish better, and a plan like itself the same throughout', () => {
    expect(comparePlans(later, early, 'Europe/London')[3]?.change).toBe('better')
    expect(comparePlans(early, early, 'Europe/London').every(({ change }) => change === 'same')).toBe(true)
  })
})
