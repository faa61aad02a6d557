import { describe, expect, it } from 'vitest'
import type { LocalPoint, Polygon } from '@swardwright/engine'
import { courseMap } from '../course-map.ts'
import { partsOf, type Drawing } from '../drawing.ts'
import { toSvgString } from '../drawing-text.ts'
import { IMPERIAL, METRIC } from '../units.ts'
import { mapPlan, type CourseMapInput, type MapGreen } from './map-input.ts'

/** A square of 20 m sides round a point. */
const square = ({ x, y }: LocalPoint): Polygon => ({
  outer: [
    { x: x - 10, y: y - 10 },
    { x: x + 10, y: y - 10 },
    { x: x + 10, y: y + 10 },
    { x: x - 10, y: y + 10 },
  ],
  holes: [],
})
const green = (id: string, hole: number | null, at: LocalPoint): MapGreen => ({
  id,
  name: `Green ${id}`,
  hole,
  outline: square(at),
  centre: at,
  isDrawn: true,
})

/** Three greens on ground 420 m wide and 220 m high: from -10 to 410 and -10 to 210. */
const input: CourseMapInput = {
  ground: {
    greens: [
      green('a', 1, { x: 0, y: 0 }),
      green('b', 2, { x: 400, y: 200 }),
      green('c', null, { x: 200, y: 100 }),
    ],
    places: [
      { id: 's', name: 'Shed', kind: 'shed', at: { x: 100, y: 20 } },
      { id: 'y', name: 'Sand bay', kind: 'sandBay', at: { x: 104, y: 20 } },
      { id: 'w', name: 'Pond', kind: 'water', at: { x: 300, y: 50 }, outline: square({ x: 300, y: 50 }) },
    ],
  },
  labels: 'numbers',
  units: METRIC,
  // 22 px of edge each side leave 420 px for 420 m: one pixel a metre.
  widthPx: 464,
  scope: 'test',
}

const shapeOf = (drawing: Drawing | undefined): Drawing | undefined =>
  drawing?.children.find(
    (child): child is Drawing => typeof child !== 'string' && child.attributes['data-shape'] === 'green',
  )
const titles = (drawing: Drawing, kind: string): readonly unknown[] =>
  partsOf(drawing, kind).map((found) => found.attributes['aria-label'])

describe('the map', () => {
  it('is true to scale, north up', () => {
    const plan = mapPlan(input.ground, 464)
    expect(plan.pxPerM).toBeCloseTo(1, 12)
    const [a] = partsOf(courseMap(input), 'green')
    // 20 m square round 0, 0: 10 px either side of x 32 and of y 22 + 210.
    expect(shapeOf(a)?.attributes['d']).toBe('M22 242L42 242L42 222L22 222Z')
    const [southY, northY] = [plan.toPx({ x: 0, y: 0 })[1], plan.toPx({ x: 0, y: 100 })[1]]
    expect(southY - northY).toBeCloseTo(100, 9)
  })

  it('shows every green with its state in words', () => {
    const states = new Map([
      ['a', 'opened'],
      ['b', 'finished'],
    ] as const)
    expect(titles(courseMap({ ...input, states }), 'green')).toEqual([
      '1 Green a, opened',
      '2 Green b, finished',
      'Green c, in play',
    ])
  })

  it('tells opened from dressed by pattern as well as by colour', () => {
    const fills = (state: 'opened' | 'dressed'): string =>
      toSvgString(partsOf(courseMap({ ...input, states: new Map([['a', state]]) }), 'green')[0] as Drawing)
    expect(fills('opened')).toContain('url(#test-shut)')
    expect(fills('dressed')).toContain('url(#test-grit)')
  })

  it('numbers the walk in its order, with a leg between two greens', () => {
    const walked = courseMap({ ...input, walk: ['b', 'c', 'a'] })
    expect(partsOf(walked, 'step').map((step) => step.attributes['data-id'])).toEqual(['b', 'c', 'a'])
    expect(partsOf(walked, 'leg')).toHaveLength(2)
    expect(titles(walked, 'green')[0]).toBe('1 Green a, in play, number 3 in the walk')
    expect(partsOf(courseMap(input), 'leg')).toEqual([])
  })

  it('passes over greens of the walk that it does not have', () => {
    expect(partsOf(courseMap({ ...input, walk: ['a', 'gone', 'b'] }), 'step')).toHaveLength(2)
  })

  it('draws a yard as one group with one word', () => {
    const text = toSvgString(courseMap(input))
    expect(text).toContain('>yard<')
    expect(text).not.toContain('>shed<')
    expect(titles(courseMap(input), 'sandBay')).toEqual(['Sand bay'])
  })

  it('has a bar of a round length in the club\u2019s unit', () => {
    // One pixel a metre and at most 120 px: 100 m, or 100 yd = 91.44 m.
    const bar = (units: typeof METRIC): string =>
      toSvgString(partsOf(courseMap({ ...input, units }), 'scale')[0] as Drawing)
    expect(bar(METRIC)).toContain('>100 m<')
    expect(bar(METRIC)).toContain('width="50"')
    expect(bar(IMPERIAL)).toContain('>100 yd<')
    expect(bar(IMPERIAL)).toContain('width="45.72"')
  })

  it('keeps labels off each other', () => {
    const near = [
      green('a', 1, { x: 0, y: 0 }),
      green('b', 2, { x: 24, y: 0 }),
      green('c', 3, { x: 400, y: 200 }),
    ]
    const drawn = courseMap({ ...input, ground: { greens: near, places: [] } })
    const at = partsOf(drawn, 'label').map((label) =>
      toSvgString(label)
        .match(/x="([\d.]+)" y="([\d.]+)"/u)
        ?.slice(1),
    )
    expect(new Set(at.map(String)).size).toBe(3)
  })

  it('marks an outline that nobody has drawn', () => {
    const rough = { ...green('a', 1, { x: 0, y: 0 }), isDrawn: false }
    const drawn = courseMap({ ...input, ground: { greens: [rough], places: [] } })
    expect(titles(drawn, 'green')).toEqual(['1 Green a, in play, outline not drawn'])
    expect(shapeOf(partsOf(drawn, 'green')[0])?.attributes['stroke-dasharray']).toBe('3 2')
  })

  it('holds one green alone', () => {
    const alone = courseMap({ ...input, ground: { greens: [green('a', 1, { x: 5, y: 5 })], places: [] } })
    expect(toSvgString(alone)).not.toMatch(/NaN|Infinity/u)
  })
})
