import { courseFromCount, lonLat, planeAt } from '@swardwright/engine'
import { describe, expect, it } from 'vitest'
import { draftOf, ellipseDraft, fieldsOf, judge, type Pair } from './draft.ts'

const place = lonLat(-4.9, 53.7)
if (!place.ok) throw new Error('the place lies on the globe')
const plane = planeAt(place.value)
const corner = (x: number, y: number): Pair => {
  const { lonDeg, latDeg } = plane.toLonLat({ x, y })
  return [lonDeg, latDeg]
}

const SQUARE = [corner(0, 0), corner(20, 0), corner(20, 25), corner(0, 25)]

describe('an outline in the making', () => {
  it('is sound with its area told: 20 m by 25 m', () => {
    const judged = judge({ outer: SQUARE, holes: [] }, 'Seven')
    expect(judged.type === 'sound' && judged.facts.areaM2).toBeCloseTo(500, 1)
  })

  it('is refused with the place where it crosses itself', () => {
    // Corners 3 and 4 changed round: the edges from 2 to 3 and 4 to 1 cross in the middle, at 10 m and 12.5 m.
    const [a, b, c, d] = SQUARE as [Pair, Pair, Pair, Pair]
    const judged = judge({ outer: [a, b, d, c], holes: [] }, 'Seven')
    if (judged.type !== 'wrong' || judged.at === null) throw new Error(judged.type)
    const [lon, lat] = corner(10, 12.5)
    expect(judged.at[0]).toBeCloseTo(lon, 6)
    expect(judged.at[1]).toBeCloseTo(lat, 6)
    expect(judged.sentence).toContain('crosses itself')
  })

  it('is refused as a sliver with a place, too small or with too few corners', () => {
    const sliver = judge({ outer: [corner(0, 0), corner(60, 0), corner(60, 0.1)], holes: [] }, 'Seven')
    expect(sliver.type === 'wrong' && sliver.at).not.toBeNull()
    const small = judge({ outer: [corner(0, 0), corner(4, 0), corner(4, 4)], holes: [] }, 'Seven')
    expect(small.type === 'wrong' && small.sentence).toContain('20')
    expect(judge({ outer: SQUARE.slice(0, 2), holes: [] }, 'Seven').type).toBe('wrong')
    expect(judge({ outer: [], holes: [] }, 'Seven').type).toBe('empty')
  })

  it('is kept closed with area and place, and taken up again as it was', () => {
    const draft = { outer: SQUARE, holes: [] }
    const judged = judge(draft, 'Seven')
    const rough = courseFromCount({ greens: 1, totalAreaM2: 512 })
    const [green] = rough.ok ? rough.value.course.greens : []
    if (judged.type !== 'sound' || green === undefined) throw new Error('both are sound')
    const kept = { ...green, ...fieldsOf(draft, judged.facts) }
    expect(kept.outline[0]?.[0]).toEqual(kept.outline[0]?.at(-1))
    expect(draftOf(kept)).toEqual(draft)
    expect(draftOf(green)).toEqual({ outer: [], holes: [] })
    // Every third corner of an ellipse of 72: a 24-sided figure has 24 sin(15) / 72 sin(5) of its area, 0.98985.
    const ellipse = judge(ellipseDraft(green), 'Seven')
    expect(ellipse.type === 'sound' && ellipse.facts.areaM2).toBeCloseTo(512 * 0.98985, 0)
  })
})
