import { expect, test } from 'vitest'
import { bestHeading, HEADING_SEARCH_ERROR_SHARE } from './best-heading.ts'
import { checkedPolygon } from './checked-polygon.ts'
import {
  circle,
  ellipse,
  kidney,
  lShape,
  moved,
  randomOutline,
  rectangle,
  withIsland,
} from './fixtures/outlines.ts'
import { banFromTo, bansFromLastTimes, bansBroken, crossSlopeBan, crossSlopePercent } from './heading-ban.ts'
import { angleBetweenDeg } from './heading-frame.ts'
import { planPasses } from './passes.ts'
import type { PassSettings } from './pass-settings.ts'
import type { Polygon } from './polygon.ts'

const settings: PassSettings = {
  widthM: 1.2,
  overlapM: 0.05,
  speedMPerS: 0.8,
  turnS: 12,
  turnRadiusM: 0,
  turnStyle: 'lift',
  laps: 0,
  order: 'backAndForth',
}

const best = (polygon: Polygon, wish = {}, machine = settings) => {
  const found = bestHeading(polygon, machine, wish)
  if (!found.ok) throw new Error(found.error.type)
  return found.value
}

const sweptMin = (polygon: Polygon, stepDeg: number, machine = settings): number =>
  Math.min(
    ...Array.from({ length: 180 / stepDeg }, (_, k) => planPasses(polygon, machine, k * stepDeg).timeMin),
  )

test('a long rectangle is worked along its long side, wherever it lies', () => {
  expect(best(rectangle(17, 29)).headingDeg).toBeCloseTo(0, 1)
  expect(best(moved(rectangle(17, 29), 33, 50, 70)).headingDeg).toBeCloseTo(33, 1)
})

test('the time found is not above a sweep in half degrees by more than the stated error', () => {
  const outlines = [circle(12, 90), ellipse(9, 14, 90), kidney(), lShape(), withIsland(3)]
  for (let seed = 1; seed <= 8; seed++) {
    const checked = checkedPolygon(randomOutline(seed))
    if (checked.ok) outlines.push(checked.value)
  }
  for (const polygon of outlines) {
    const found = best(polygon)
    expect(found.timeMin).toBeLessThanOrEqual(sweptMin(polygon, 0.5) * (1 + HEADING_SEARCH_ERROR_SHARE))
    expect(found.lowerBoundMin).toBeLessThanOrEqual(found.timeMin)
  }
})

test('without a turn time the length of turns decides, within the same error', () => {
  const { turnS: _, ...machine } = { ...settings, turnRadiusM: 1.5, turnStyle: 'keyhole' as const }
  for (const polygon of [ellipse(9, 14, 90), lShape()]) {
    const swept = sweptMin(polygon, 0.5, machine)
    expect(best(polygon, {}, machine).timeMin).toBeLessThanOrEqual(swept * (1 + HEADING_SEARCH_ERROR_SHARE))
  }
})

test('a ban is kept, and its limit is used where that is the quickest left', () => {
  const ban = banFromTo(-20, 20, 'bunker')
  const found = best(rectangle(17, 29), { bans: [ban] })
  expect(bansBroken(found.headingDeg, [ban])).toEqual([])
  expect(found.timeMin).toBeGreaterThan(best(rectangle(17, 29)).timeMin)
})

test('when every heading is banned the answer is which bans', () => {
  const bans = [banFromTo(0, 100, 'bunker'), banFromTo(90, 190, 'other')]
  expect(bestHeading(rectangle(17, 29), settings, { bans })).toEqual({
    ok: false,
    error: { type: 'allHeadingsBanned', bans },
  })
})

test('cuts both ways are square to each other, and their sum is what is least', () => {
  const found = best(lShape(), { offsetsDeg: [0, 90] })
  expect(found.passes).toHaveLength(2)
  const [first, second] = found.passes
  expect(angleBetweenDeg(first?.headingDeg ?? 0, second?.headingDeg ?? 0)).toBeCloseTo(90, 9)
  expect(found.timeMin).toBeCloseTo((first?.timeMin ?? 0) + (second?.timeMin ?? 0), 9)
})

test('a second pass keeps its set angle, and both passes keep the bans', () => {
  const bans = bansFromLastTimes([0, 45], 15)
  const found = best(rectangle(17, 29), { bans, offsetsDeg: [0, 12] })
  const headings = found.passes.map((pass) => pass.headingDeg)
  expect(angleBetweenDeg(headings[0] ?? 0, headings[1] ?? 0)).toBeCloseTo(12, 9)
  for (const headingDeg of headings) expect(bansBroken(headingDeg, bans)).toEqual([])
})

test('a slope of 20 % with a machine good for 10 % sideways leaves 30 degrees either side of the fall line (sin 30 = 1/2)', () => {
  const ban = crossSlopeBan(20, 80, 10)
  if (ban === undefined) throw new Error('the slope is over the limit')
  expect(ban.halfWidthDeg).toBeCloseTo(60, 9)
  expect(bansBroken(80 + 29, [ban])).toEqual([])
  expect(bansBroken(80 + 31, [ban])).toEqual([ban])
  expect(crossSlopePercent(20, 80, 110)).toBeCloseTo(10, 9)
  expect(crossSlopeBan(8, 80, 10)).toBeUndefined()
})
