import { describe, expect, it } from 'vitest'
import { partsOf, type Drawing } from '../drawing.ts'
import { toSvgString } from '../drawing-text.ts'
import { sectionDrawing } from '../section.ts'
import { IMPERIAL, METRIC } from '../units.ts'
import { cutsAcross, type SectionInput } from './section-input.ts'
import { soilDarkness, unmeasured } from './soil.ts'

const PX_PER_MM = 3

const input: SectionInput = {
  layers: [
    { fromMm: 0, toMm: 20, organicPercent: 9.1, organicKgPerM2: 2.13 },
    { fromMm: 20, toMm: 60, organicPercent: 4.2 },
  ],
  thatchMm: 12,
  tines: [{ holeDiameterMm: 13, coreDiameterMm: 10, acrossMm: 50, depthMm: 75 }],
  blades: [{ bladeWidthMm: 2, bladeSpacingMm: 40, depthMm: 25, passes: 1 }],
  sand: { surfaceMm: 3, filledShare: 0.8 },
  state: 'after',
  pxPerMm: PX_PER_MM,
  units: METRIC,
  scope: 'test',
}

const drawn = (changes: Partial<SectionInput>): Drawing => sectionDrawing({ ...input, ...changes })

/** All elements below one that carry an attribute, whatever their depth. */
const withAttribute = (drawing: Drawing, name: string, value?: string): readonly Drawing[] => [
  ...(name in drawing.attributes && (value === undefined || drawing.attributes[name] === value)
    ? [drawing]
    : []),
  ...drawing.children.flatMap((child) =>
    typeof child === 'string' ? [] : withAttribute(child, name, value),
  ),
]

const number = (drawing: Drawing | undefined, name: string): number => Number(drawing?.attributes[name])
const titles = (drawing: Drawing, kind: string): readonly unknown[] =>
  partsOf(drawing, kind).map((found) => found.attributes['aria-label'])

describe('holes in the section', () => {
  // 100 mm holds two spacings of 50 mm, five of 20 mm; 150 mm holds three of 50 mm.
  it.each([
    [50, 100, 2],
    [20, 100, 5],
    [50, 150, 3],
    [38, 100, 3],
    [120, 100, 1],
  ])('%i mm apart are as many as fit %i mm: %i', (acrossMm, widthMm, count) => {
    const tines = [{ holeDiameterMm: 13, coreDiameterMm: 10, acrossMm, depthMm: 75 }]
    expect(partsOf(drawn({ tines, widthMm }), 'hole')).toHaveLength(count)
  })

  it('are as wide as the outside of the tine and as deep as it goes, to scale', () => {
    const rooms = partsOf(drawn({}), 'hole').map((hole) => withAttribute(hole, 'data-room')[0])
    for (const room of rooms) {
      expect(number(room, 'width')).toBeCloseTo(13 * PX_PER_MM, 6)
      expect(number(room, 'height')).toBeCloseTo(75 * PX_PER_MM, 6)
    }
    expect(number(rooms[1], 'x') - number(rooms[0], 'x')).toBeCloseTo(50 * PX_PER_MM, 6)
  })

  it('carry the core dotted at the inside of the tine, in the middle of the hole', () => {
    const [hole] = partsOf(drawn({ state: 'opened' }), 'hole')
    const [room] = withAttribute(hole as Drawing, 'data-room')
    const [core] = withAttribute(hole as Drawing, 'data-line', 'core')
    expect(number(core, 'width')).toBeCloseTo(10 * PX_PER_MM, 6)
    expect(number(core, 'x') + number(core, 'width') / 2).toBeCloseTo(
      number(room, 'x') + number(room, 'width') / 2,
      6,
    )
    expect(String(core?.attributes['stroke-dasharray'])).not.toBe('')
  })

  it('of a solid tine have no core', () => {
    const tines = [{ holeDiameterMm: 12, coreDiameterMm: 0, acrossMm: 50, depthMm: 60 }]
    expect(withAttribute(drawn({ tines }), 'data-line', 'core')).toEqual([])
    expect(titles(drawn({ tines }), 'hole')[0]).toMatch(/^solid hole 12 mm/u)
  })

  it('tell their diameters and volumes', () => {
    // Cylinder: pi/4 x 13^2 x 75 = 9,955 mm3 = 10.0 ml; pi/4 x 10^2 x 75 = 5,890 mm3 = 5.9 ml.
    expect(titles(drawn({}), 'hole')[0]).toBe('hole 13 mm, core 10 mm, 75 mm deep: holds 10 ml, core 5.9 ml')
  })

  it('deeper than the cut run off its bottom and say so', () => {
    const tines = [{ holeDiameterMm: 12, coreDiameterMm: 0, acrossMm: 50, depthMm: 225 }]
    const deep = drawn({ tines })
    const [room] = withAttribute(deep, 'data-room', 'hole')
    expect(number(room, 'height')).toBeCloseTo(100 * PX_PER_MM, 6)
    expect(withAttribute(deep, 'data-line', 'deeper')).toHaveLength(2)
    expect(titles(deep, 'hole')[0]).toMatch(/225 mm deep/u)
  })
})

describe('grooves in the section', () => {
  it('are as wide as the blade and as deep as it goes', () => {
    const [groove] = withAttribute(drawn({}), 'data-room', 'groove')
    expect(number(groove, 'width')).toBeCloseTo(2 * PX_PER_MM, 6)
    expect(number(groove, 'height')).toBeCloseTo(25 * PX_PER_MM, 6)
  })

  it('of two passes are twice as many, none on top of another', () => {
    // 120 mm holds three spacings of 40 mm.
    const blades = [{ bladeWidthMm: 2, bladeSpacingMm: 40, depthMm: 25, passes: 2 }]
    const grooves = withAttribute(drawn({ blades, widthMm: 120 }), 'data-room', 'groove')
    expect(grooves).toHaveLength(6)
    expect(new Set(grooves.map((groove) => groove.attributes['x'])).size).toBe(6)
  })

  it('tell what a metre of them holds', () => {
    // 2 mm x 25 mm x 1,000 mm = 50,000 mm3 = 50 ml.
    expect(titles(drawn({}), 'groove')[0]).toBe('groove 2 mm wide, 25 mm deep: 50 ml a metre')
  })
})

describe('states', () => {
  it('before the work there is neither hole nor groove nor sand', () => {
    const before = drawn({ state: 'before' })
    expect(partsOf(before, 'hole')).toEqual([])
    expect(partsOf(before, 'groove')).toEqual([])
    expect(withAttribute(before, 'data-fill', 'sand')).toEqual([])
    expect(partsOf(before, 'measure')).toEqual([])
  })

  it('opened, the holes are there and empty', () => {
    const opened = drawn({ state: 'opened' })
    expect(partsOf(opened, 'hole')).toHaveLength(2)
    expect(withAttribute(opened, 'data-fill', 'sand')).toEqual([])
  })

  it('finished, sand fills the stated share of each depth and lies on the surface', () => {
    const after = drawn({})
    const [hole] = partsOf(after, 'hole')
    const [fill] = withAttribute(hole as Drawing, 'data-fill', 'sand')
    expect(number(fill, 'height')).toBeCloseTo(0.8 * 75 * PX_PER_MM, 6)
    const [surface] = partsOf(after, 'surfaceSand')
    const [layer] = withAttribute(surface as Drawing, 'data-fill', 'sand')
    expect(number(layer, 'height')).toBeCloseTo(3 * PX_PER_MM, 6)
  })

  it('finished without sand, nothing is filled', () => {
    expect(withAttribute(drawn({ sand: undefined }), 'data-fill', 'sand')).toEqual([])
    const none = drawn({ sand: { surfaceMm: 0, filledShare: 0 } })
    expect(withAttribute(none, 'data-fill', 'sand')).toEqual([])
  })
})

describe('the soil', () => {
  it('tells percent and mass of each layer on touch', () => {
    expect(titles(drawn({}), 'layer')).toEqual([
      '0 to 20 mm: 9.1 % organic matter, 2.13 kg/m\u00b2',
      '20 to 60 mm: 4.2 % organic matter',
    ])
    expect(titles(drawn({ units: IMPERIAL }), 'layer')[0]).toMatch(/^0 to 0.79 in/u)
  })

  it('is darker where there is more organic matter, from 0 to 12 % and flat from there', () => {
    const tones = [0, 1, 4, 9, 11.9].map(soilDarkness)
    expect(tones).toEqual([...tones].sort((a, b) => a - b))
    expect(new Set(tones).size).toBe(5)
    expect(soilDarkness(30)).toBe(soilDarkness(12))
  })

  it('is drawn as not measured wherever no layer lies', () => {
    expect(unmeasured(input.layers, 100)).toEqual([{ fromMm: 60, toMm: 100 }])
    expect(unmeasured([], 100)).toEqual([{ fromMm: 0, toMm: 100 }])
    expect(unmeasured([{ fromMm: 20, toMm: 40, organicPercent: 3 }], 100)).toEqual([
      { fromMm: 0, toMm: 20 },
      { fromMm: 40, toMm: 100 },
    ])
    expect(unmeasured([{ fromMm: 0, toMm: 150, organicPercent: 3 }], 100)).toEqual([])
  })

  it('shows thatch as thick as it was measured', () => {
    const [thatch] = partsOf(drawn({}), 'thatch')
    const [band] = withAttribute(thatch as Drawing, 'height')
    expect(number(band, 'height')).toBeCloseTo(12 * PX_PER_MM, 6)
    expect(partsOf(drawn({ thatchMm: undefined }), 'thatch')).toEqual([])
  })
})

describe('rulers', () => {
  const marks = (drawing: Drawing): readonly unknown[] =>
    partsOf(drawing, 'ruler').map((ruler) => ruler.attributes['data-id'])

  it('are in millimetres, and in inches as well when the club reads depth so', () => {
    expect(marks(drawn({}))).toEqual(['mm'])
    expect(marks(drawn({ units: IMPERIAL }))).toEqual(['mm', 'in'])
  })

  it('mark three inches at 76.2 mm', () => {
    const text = toSvgString(partsOf(drawn({ units: IMPERIAL }), 'ruler')[1] as Drawing)
    // 76.2 mm x 3 px + 44 px above ground + 4 px to the middle of the figure.
    expect(text).toContain(`y="${76.2 * 3 + 44 + 4}"`)
  })
})

it('cuts lie half a spacing in and a spacing apart', () => {
  expect(cutsAcross(50, 100)).toEqual([25, 75])
  expect(cutsAcross(40, 80, 0, 2)).toEqual([10, 50])
  expect(cutsAcross(40, 80, 1, 2)).toEqual([30, 70])
})

it('the same input draws the same picture, and names the cut', () => {
  expect(toSvgString(drawn({}))).toBe(toSvgString(drawn({})))
  expect(drawn({}).attributes['aria-label']).toBe('Cut through the top 100 mm of the green, finished')
})
