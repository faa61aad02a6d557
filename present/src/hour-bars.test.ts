import { describe, expect, it } from 'vitest'
import { barsRow, type HourBars } from './hour-bars.ts'
import { toSvgString } from './drawing-text.ts'

const wind: HourBars = {
  id: 'wind',
  label: 'wind m/s',
  values: [2, 4, 6, 9, null, 0],
  top: 10,
  careFrom: 5.5,
  stopFrom: 8,
  words: (speed) => `${speed} m/s`,
  figure: (speed) => String(speed),
}
// A full bar is 22 px high.
const place = { basePx: 100, leftPx: 50, rightPx: 170, pxPerHour: 20 }

describe('a row of bars', () => {
  it('has a bar to scale for each known hour, and tells its span in words', () => {
    const svg = toSvgString(barsRow(wind, place))
    expect(svg).toContain('aria-label="wind m/s: 0 m/s to 9 m/s"')
    expect([...svg.matchAll(/<rect [^>]*height="([\d.]+)"/gu)].map((match) => Number(match[1]))).toEqual([
      4.4,
      8.8,
      13.2,
      expect.closeTo(19.8, 9),
    ])
    expect(svg).toContain('var(--ochre)')
    expect(svg).toContain('var(--rust)')
  })

  it('says the highest figure of each third, once', () => {
    const svg = toSvgString(barsRow(wind, place))
    const figures = [...svg.matchAll(/<text [^>]*text-anchor="middle"[^>]*>([^<]+)<\/text>/gu)].map(
      (m) => m[1],
    )
    expect(new Set(figures)).toEqual(new Set(['4', '9']))
  })

  it('says so when nothing is known', () => {
    expect(toSvgString(barsRow({ ...wind, values: [null, null] }, place))).toContain('not known')
  })
})
