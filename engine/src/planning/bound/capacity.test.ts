import { describe, expect, it } from 'vitest'
import { peopleCapacity, plainCapacity } from './capacity.ts'

const person = (breaks: readonly { window: { start: number; end: number }; minutes: number }[]) => ({
  id: 'p',
  skills: new Set([]),
  shifts: [{ start: 100, end: 200 }],
  ordinaryEndMin: [200],
  breaks,
})

describe('minutes that machines and people have', () => {
  it('sums calendars that overlap, by hand: 10 to 20 once, 20 to 30 twice, 30 to 40 once', () => {
    const { between, upTo } = plainCapacity([[{ start: 10, end: 30 }], [{ start: 20, end: 40 }]])
    expect([upTo(0), upTo(15), upTo(25), upTo(99)]).toEqual([0, 5, 20, 40])
    expect(between(25, 35)).toBe(15)
    expect(between(35, 25)).toBe(0)
  })

  it('takes a break off where it must fall into the time, and only so much of it', () => {
    const { between } = peopleCapacity([person([{ window: { start: 120, end: 180 }, minutes: 30 }])])
    // The whole shift: 100 minutes less the break of 30.
    expect(between(0, 300)).toBe(70)
    // From 100 to 150: the break can be from 150 to 180.
    expect(between(100, 150)).toBe(50)
    // From 100 to 170: 10 minutes of the window lie after it, so 20 of the break fall into it.
    expect(between(100, 170)).toBe(50)
    // From 140 to 200: 20 minutes of the window lie before it.
    expect(between(140, 200)).toBe(50)
  })
})
