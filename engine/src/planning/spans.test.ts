import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { firstFit, intersectSpans, mergeSpans, NEVER, spansOfHours, subtractSpans } from './spans.ts'
import type { Span } from './problem.ts'

const MOST = 60

const covered = (spans: readonly Span[]): readonly boolean[] =>
  Array.from({ length: MOST }, (_, minute) => spans.some((s) => minute >= s.start && minute < s.end))

const someSpans = fc
  .array(fc.tuple(fc.nat(MOST - 1), fc.integer({ min: 1, max: 12 })), { maxLength: 6 })
  .map((pairs) =>
    mergeSpans(pairs.map(([start, length]) => ({ start, end: Math.min(MOST, start + length) }))),
  )

describe('spans of minutes', () => {
  it('leave, share and join exactly the minutes that sets would', () => {
    fc.assert(
      fc.property(someSpans, someSpans, (a, b) => {
        const [inA, inB] = [covered(a), covered(b)]
        expect(covered(subtractSpans(a, b))).toEqual(inA.map((x, i) => x && !inB[i]))
        expect(covered(intersectSpans(a, b))).toEqual(inA.map((x, i) => x && inB[i]))
        expect(covered(mergeSpans([...a, ...b]))).toEqual(inA.map((x, i) => x || inB[i]))
      }),
      { seed: 4711, numRuns: 500 },
    )
  })

  it('find the first stretch long enough, as trying every minute would', () => {
    fc.assert(
      fc.property(someSpans, fc.nat(MOST), fc.integer({ min: 1, max: 12 }), (spans, from, minutes) => {
        const inside = covered(spans)
        let expected = NEVER
        for (let start = from; start + minutes <= MOST && expected === NEVER; start++)
          if (inside.slice(start, start + minutes).every(Boolean)) expected = start
        expect(firstFit(spans, from, minutes)).toBe(expected)
      }),
      { seed: 4712, numRuns: 500 },
    )
  })

  it('are made of flagged hours, one span for hours in a row', () => {
    expect(spansOfHours([0, 1, 1, 0, 1])).toEqual([
      { start: 60, end: 180 },
      { start: 240, end: 300 },
    ])
  })
})
