import {
  afterSandByMass,
  afterSandByVolume,
  calculate,
  closedShare,
  darkGreenIndexOf,
  edgeGrowthByDayMm,
  growthPotentialOf,
  RATE_SPREAD,
  speedWithoutSlope,
  type OpeningKind,
} from '@swardwright/engine'
import { barPlot, type Bar } from './bar-plot.ts'
import { linePlot, pointsOf } from './line-plot.ts'
import { COLOUR } from './svg.ts'

const steps = (from: number, to: number, by: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / by) + 1 }, (_, i) => Number((from + i * by).toFixed(6)))

/** A number of the answer of a calculation; a picture of an error would be a lie, so it throws. */
const answer = (name: string, input: unknown, field: string): number => {
  const outcome = calculate(name, input)
  if (!outcome.ok) throw new Error(`${name}: ${JSON.stringify(outcome.error)}`)
  return Number((outcome.value as Readonly<Record<string, unknown>>)[field])
}

export const organicPicture = (): string => {
  const window = { windowMm: 20, organicPercent: 8 }
  return linePlot({
    title: 'Organic matter of the top 20 mm (8 %) after dressing',
    x: { words: 'sand put on, mm', ticks: steps(0, 10, 2) },
    y: { words: 'organic matter, %', ticks: steps(3, 8, 1) },
    lines: [
      {
        name: 'by mass',
        colour: COLOUR.leaf,
        points: pointsOf(0, 10, 40, (mm) => afterSandByMass(window, mm)),
      },
      {
        name: 'quick rule by volume',
        colour: COLOUR.rust,
        dashed: true,
        points: pointsOf(0, 10, 40, (mm) => afterSandByVolume(window, mm)),
      },
    ],
    marks: [{ x: 1, y: 7.6, words: 'printed: 7.6 % (Woods 2019)', side: 'above' }],
  })
}

export const sandPicture = (): string => {
  const hole = { holeDiameterMm: 13, coreDiameterMm: 9.5, acrossMm: 50, alongMm: 50, depthMm: 75 }
  const grooves = { bladeWidthMm: 2, bladeSpacingMm: 30, depthMm: 20, passes: 2, crossed: true }
  const per = (more: object, field: string): number =>
    answer('sand.need', { areaM2: 1000, hole, surfaceMm: 0, bulkDensityKgPerM3: 1000, ...more }, field)
  const surfaceMm = 1
  // With 1000 m2 and 1000 kg/m3 a tonne stands for a litre a square metre.
  const grooveL = per({ grooves }, 'highT') - per({}, 'highT')
  const bar = (name: string, field: string): Bar => {
    const holesL = per({}, field)
    return {
      name,
      sum: `${(holesL + grooveL + surfaceMm).toFixed(1)} mm`,
      parts: [
        { words: `holes ${holesL.toFixed(1)}`, value: holesL, colour: COLOUR.sand },
        { words: `grooves ${grooveL.toFixed(1)}`, value: grooveL, colour: '#e9d6ac' },
        { words: 'top', value: surfaceMm, colour: '#f3ead2' },
      ],
    }
  }
  return barPlot('Sand that a square metre takes, mm (13 mm holes, 9.5 mm cores, 75 mm deep)', 8, [
    bar('low: the cores', 'lowT'),
    bar('likely: 0.85 holes', 'likelyT'),
    bar('high: whole holes', 'highT'),
  ])
}

export const growthPicture = (): string => {
  const curve = (season: 'cool' | 'warm', optimumC?: number) =>
    pointsOf(0, 34, 68, (meanC) => growthPotentialOf({ meanC, season, optimumC }))
  return linePlot({
    title: 'Growth potential by mean temperature',
    x: { words: 'mean air temperature, C', ticks: steps(0, 35, 5) },
    y: { words: 'growth potential', ticks: steps(0, 1, 0.25) },
    lines: [
      { name: 'cool-season grass', colour: COLOUR.leaf, points: curve('cool'), shiftPx: -8 },
      {
        name: 'optimum 18 C (Poa)',
        colour: COLOUR.ochre,
        dashed: true,
        points: curve('cool', 18),
        shiftPx: 8,
      },
      { name: 'warm-season grass', colour: COLOUR.rust, points: curve('warm') },
    ],
    marks: [{ x: 13.5, y: 0.5, words: 'open greens above half', side: 'left' }],
  })
}

export const recoveryPicture = (): string => {
  const cover = (kind: OpeningKind, diameterMm: number, factor: number) => {
    const days = Array.from({ length: 40 }, () => ({ meanC: 16 }))
    const grown = edgeGrowthByDayMm(days, { kind, season: 'cool', factor })
    return [
      [0, 0] as const,
      ...grown.map((mm, i) => [i + 1, 100 * closedShare(kind, diameterMm, mm)] as const),
    ]
  }
  const slow = cover('core', 12, 1 - RATE_SPREAD)
  const expected = cover('core', 12, 1)
  const fast = cover('core', 12, 1 + RATE_SPREAD)
  return linePlot({
    title: 'Share of the opening grown over, 16 C every day',
    x: { words: 'days after the work', ticks: steps(0, 40, 5) },
    y: { words: 'grown over, %', ticks: steps(0, 100, 25) },
    lines: [
      { name: '', colour: COLOUR.leaf, points: expected },
      { name: '', colour: COLOUR.leaf, dashed: true, points: slow },
      { name: '', colour: COLOUR.leaf, dashed: true, points: fast },
      { name: '3 mm groove', colour: COLOUR.rust, points: cover('groove', 3, 1), shiftPx: 4 },
    ],
    marks: [
      { x: 3, y: fast[3]?.[1] ?? 0, words: 'fast', side: 'left' },
      { x: 11, y: slow[11]?.[1] ?? 0, words: 'slow (a 12 mm core)', side: 'below' },
    ],
  })
}

export const gradingPicture = (): string => {
  const sieves = [
    [0.05, 1],
    [0.15, 5],
    [0.25, 20],
    [0.5, 70],
    [1, 95],
    [2, 100],
  ] as const
  const input = { sieves: sieves.map(([sizeMm, passingPercent]) => ({ sizeMm, passingPercent })) }
  const at = (field: string): number => answer('sandGrading.describe', input, field)
  // The axis is the power of two of the size, so that equal steps are equal factors.
  const log = (mm: number): number => Math.log2(mm)
  return linePlot({
    title: 'A sieve analysis and what is read off it',
    x: {
      words: 'size, mm',
      ticks: steps(-5, 1, 1),
      labels: ['0.03', '0.06', '0.125', '0.25', '0.5', '1', '2'],
    },
    y: { words: 'finer than, %', ticks: steps(0, 100, 20) },
    lines: [
      {
        name: 'an invented sand',
        colour: COLOUR.ochre,
        points: sieves.map(([mm, p]) => [log(mm), p] as const),
      },
    ],
    marks: (
      [
        ['d15Mm', 15],
        ['d50Mm', 50],
        ['d85Mm', 85],
      ] as const
    ).map(([field, percent]) => ({
      x: log(at(field)),
      y: percent,
      words: `D${percent} ${at(field).toFixed(2)} mm`,
      side: 'left' as const,
    })),
  })
}

export const colourPicture = (): string =>
  linePlot({
    title: 'Dark green colour index by hue',
    x: { words: 'hue, degrees (57 to 107 counts as green turf)', ticks: steps(50, 120, 10) },
    y: { words: 'index', ticks: steps(0, 0.8, 0.2) },
    lines: [
      {
        name: 'dull and dark',
        colour: COLOUR.leaf,
        points: pointsOf(57, 107, 10, (hueDeg) =>
          darkGreenIndexOf({ hueDeg, saturation: 0.4, brightness: 0.4 }),
        ),
      },
      {
        name: 'bright and strong',
        colour: COLOUR.ochre,
        points: pointsOf(57, 107, 10, (hueDeg) =>
          darkGreenIndexOf({ hueDeg, saturation: 0.85, brightness: 0.95 }),
        ),
      },
    ],
  })

export const nutritionPicture = (): string => {
  const nitrogen = (basis: 'w/w' | 'w/v', litresPerHa: number): number =>
    answer(
      'nutrition.applied',
      {
        nPercent: 12,
        p2o5Percent: 4,
        k2oPercent: 6,
        rate: { value: litresPerHa, unit: 'L/ha' },
        basis,
        specificGravity: 1.18,
      },
      'nKgPerHa',
    )
  return linePlot({
    title: 'Nitrogen from a liquid 12-4-6 of specific gravity 1.18',
    x: { words: 'rate, L/ha', ticks: steps(0, 100, 20) },
    y: { words: 'nitrogen, kg/ha', ticks: steps(0, 15, 5) },
    lines: [
      {
        name: 'label by mass (w/w)',
        colour: COLOUR.leaf,
        points: pointsOf(0, 100, 10, (l) => nitrogen('w/w', l)),
        shiftPx: -6,
      },
      {
        name: 'by volume (w/v)',
        colour: COLOUR.rust,
        dashed: true,
        points: pointsOf(0, 100, 10, (l) => nitrogen('w/v', l)),
        shiftPx: 8,
      },
    ],
    marks: [{ x: 60, y: nitrogen('w/w', 60), words: '60 L/ha: 8.5 or 7.2 kg', side: 'left' }],
  })
}

export const compostPicture = (): string => {
  const clippings = { massKg: 10, moisturePercent: 77, carbonPercent: 45, nitrogenPercent: 2.4 }
  const mix = (massKg: number, field: string): number =>
    answer(
      'compost.mix',
      { materials: [clippings, { massKg, moisturePercent: 35, carbonPercent: 50, nitrogenPercent: 0.75 }] },
      field,
    )
  return linePlot({
    title: '10 kg of clippings with leaves added',
    x: { words: 'leaves added, kg', ticks: steps(0, 10, 2) },
    y: { words: 'moisture %, and carbon to nitrogen', ticks: steps(0, 80, 20) },
    lines: [
      {
        name: 'moisture, %',
        colour: COLOUR.rain,
        points: pointsOf(0, 10, 40, (kg) => mix(kg, 'moisturePercent')),
      },
      {
        name: 'carbon to nitrogen',
        colour: COLOUR.ochre,
        points: pointsOf(0, 10, 40, (kg) => mix(kg, 'carbonToNitrogen')),
      },
    ],
    marks: [
      { x: 6.8, y: 60, words: 'printed: 6.8 kg for 60 %', side: 'above' },
      { x: 3.5, y: 30, words: '3.5 kg for 30 : 1', side: 'below' },
    ],
  })
}

export const readingsPicture = (): string =>
  linePlot({
    title: 'Rolls of 3 m on average, one way and back',
    x: { words: 'difference between the two rolls, m', ticks: steps(0, 3, 0.5) },
    y: { words: 'green speed, m', ticks: steps(2, 3.5, 0.5) },
    lines: [
      { name: 'plain mean', colour: COLOUR.rust, dashed: true, points: pointsOf(0, 3, 30, () => 3) },
      {
        name: 'freed from slope',
        colour: COLOUR.leaf,
        points: pointsOf(0, 3, 30, (d) => speedWithoutSlope(3 + d / 2, 3 - d / 2)),
      },
    ],
  })

export const waterPicture = (): string => {
  const et = (month: number, warmer: number): number => {
    const date = `2023-${String(month).padStart(2, '0')}-15`
    return answer(
      'weather.hargreaves',
      { date, latitudeDeg: 52, minC: 8 + warmer, maxC: 18 + warmer },
      'etMm',
    )
  }
  return linePlot({
    title: 'Water used by grass a day at 52 north, from temperatures alone',
    x: { words: 'month', ticks: steps(1, 12, 1) },
    y: { words: 'mm a day', ticks: steps(0, 6, 1) },
    lines: [
      {
        name: '8 to 18 C',
        colour: COLOUR.rain,
        points: steps(1, 12, 1).map((m) => [m, et(m, 0)] as const),
        shiftPx: 8,
      },
      {
        name: '14 to 24 C',
        colour: COLOUR.rust,
        points: steps(1, 12, 1).map((m) => [m, et(m, 6)] as const),
        shiftPx: -4,
      },
    ],
  })
}
