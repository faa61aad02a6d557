import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, quantity, yesNo } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { TURF_COLOUR_DARK_GREEN_INDEX_CHECKS } from './colour-checks.ts'

/** Colour of a pixel: hue in degrees (0 to 360), saturation and brightness 0 to 1. */
export type HueSaturationBrightness = {
  readonly hueDeg: number
  readonly saturation: number
  readonly brightness: number
}

/** Bounds of what counts as green; hue in degrees, the rest 0 to 1; both ends belong to it. */
export type GreenThresholds = {
  readonly hueMinDeg: number
  readonly hueMaxDeg: number
  readonly saturationMin: number
  readonly saturationMax: number
  readonly brightnessMin: number
  readonly brightnessMax: number
}

/** Hue 57 to 107 and any saturation (Richardson, Karcher & Purcell 2001, from memory); brightness free. */
export const START_GREEN_THRESHOLDS: GreenThresholds = {
  hueMinDeg: 57,
  hueMaxDeg: 107,
  saturationMin: 0,
  saturationMax: 1,
  brightnessMin: 0,
  brightnessMax: 1,
}

/** Dark green colour index: `((H - 60) / 60 + (1 - S) + (1 - B)) / 3` (Karcher & Richardson 2003). Not clamped to 0-1. */
export const darkGreenIndexOf = ({ hueDeg, saturation, brightness }: HueSaturationBrightness): number =>
  ((hueDeg - 60) / 60 + (1 - saturation) + (1 - brightness)) / 3

/** Whether a pixel counts as green turf. */
export const isGreenTurf = (
  c: HueSaturationBrightness,
  t: GreenThresholds = START_GREEN_THRESHOLDS,
): boolean =>
  c.hueDeg >= t.hueMinDeg &&
  c.hueDeg <= t.hueMaxDeg &&
  c.saturation >= t.saturationMin &&
  c.saturation <= t.saturationMax &&
  c.brightness >= t.brightnessMin &&
  c.brightness <= t.brightnessMax

const hue = (meaning: string) => quantity({ meaning, unit: 'deg', symbol: 'H', min: 0, max: 360 })
const part = (meaning: string, symbol: string) => quantity({ meaning, unit: '1', symbol, min: 0, max: 1 })

const colour = {
  hueDeg: hue('Hue'),
  saturation: part('Saturation', 'S'),
  brightness: part('Brightness', 'B'),
}

const { hueMinDeg, hueMaxDeg, saturationMin, saturationMax, brightnessMin, brightnessMax } =
  START_GREEN_THRESHOLDS

const thresholds = v.strictObject({
  hueMinDeg: v.optional(hue('Least hue that counts as green'), hueMinDeg),
  hueMaxDeg: v.optional(hue('Greatest hue that counts as green'), hueMaxDeg),
  saturationMin: v.optional(part('Least saturation', 'S'), saturationMin),
  saturationMax: v.optional(part('Greatest saturation', 'S'), saturationMax),
  brightnessMin: v.optional(part('Least brightness', 'B'), brightnessMin),
  brightnessMax: v.optional(part('Greatest brightness', 'B'), brightnessMax),
})

/** `turfColour.darkGreenIndex`: how dark green turf looks on a photo. */
export const turfColourDarkGreenIndex = item({
  name: 'turfColour.darkGreenIndex',
  title: 'Dark green colour index',
  words:
    'The mean of three parts: how far the hue is from yellow (60) towards green (120), how little saturated, how dark.',
  formula: 'DGCI = ((H - 60) / 60 + (1 - S) + (1 - B)) / 3',
  evidence: 'measured trial',
  sources: ['karcherRichardson2003', 'rorie2011'],
  notes: [
    'Printed as 0 (very yellow) to 1 (dark green). A hue outside 60 to 120 goes outside; the number is not clamped here.',
    'The two disc rows are from memory; their arithmetic agrees to four decimals.',
  ],
  inputs: v.strictObject(colour),
  outputs: v.strictObject({
    index: figure({ meaning: 'Dark green colour index', unit: '1', symbol: 'DGCI' }),
  }),
  checks: TURF_COLOUR_DARK_GREEN_INDEX_CHECKS,
  run: (input) => ok({ index: darkGreenIndexOf(input) }),
})

const isGreenRow = (id: string, where: string, hueDeg: number, expected: number) => ({
  id,
  class: 'memory' as const,
  source: 'richardsonCover2001' as const,
  where,
  input: { hueDeg, saturation: 0.4, brightness: 0.5 },
  output: 'greenAsNumber',
  expected,
  tolerance: 0,
})

/** `turfColour.isGreen`: does a pixel count as live turf. */
export const turfColourIsGreen = item({
  name: 'turfColour.isGreen',
  title: 'Does this colour count as green turf',
  words:
    "Green when hue, saturation and brightness all lie inside their bounds. The bounds are the site's own to set: camera and sun change them.",
  formula: '57 <= H <= 107, 0 <= S <= 1, 0 <= B <= 1 unless the bounds are set',
  evidence: 'measured trial',
  sources: ['richardsonCover2001', 'turfHue1996'],
  notes: [
    'The hue bounds are from memory. Hue seen in turf: 104 when green to 75.7 when browning (1996). Sand and dead turf mostly fall below 57 (our inference).',
  ],
  inputs: v.strictObject({ ...colour, thresholds: v.optional(thresholds) }),
  outputs: v.strictObject({
    green: yesNo('Counts as green turf'),
    greenAsNumber: figure({ meaning: 'The same as a number, 1 or 0', unit: '1' }),
  }),
  checks: [
    isGreenRow('hue-below', 'hue 56 is below 57', 56, 0),
    isGreenRow('hue-lower-bound', 'hue 57 is the lower bound', 57, 1),
    isGreenRow('hue-upper-bound', 'hue 107 is the upper bound', 107, 1),
    isGreenRow('hue-above', 'hue 108 is above 107', 108, 0),
  ],
  run: ({ thresholds: given, ...c }) => {
    const bounds = given ?? START_GREEN_THRESHOLDS
    if (bounds.hueMinDeg > bounds.hueMaxDeg)
      return notDefined(
        'thresholds.hueMinDeg',
        'deg',
        `the least hue (${bounds.hueMinDeg}) is above the greatest (${bounds.hueMaxDeg})`,
      )
    const green = isGreenTurf(c, bounds)
    return ok({ green, greenAsNumber: green ? 1 : 0 })
  },
})

/** Colour of turf on photos. */
export const TURF_COLOUR_ITEMS = [turfColourDarkGreenIndex, turfColourIsGreen]
