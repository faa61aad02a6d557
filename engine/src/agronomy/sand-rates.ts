import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { choice, figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import {
  SAND_CONVERT_RATE_CHECKS,
  SAND_DEPTH_FROM_MASS_CHECKS,
  SAND_MASS_FROM_DEPTH_CHECKS,
} from './sand-checks.ts'

/** Depth in mm of 1 ft3 on 1000 ft2: one thousandth of a foot (exact: 304.8 mm / 1000). */
export const MM_PER_FT3_PER_1000_FT2 = 0.3048

/** kg/m2 in 1 lb on 1000 ft2: 0.45359237 kg over 92.90304 m2 (both exact). */
export const KG_PER_M2_PER_LB_PER_1000_FT2 = 0.45359237 / 92.90304

/** kg/m2 in 1 t/ha. */
export const KG_PER_M2_PER_T_PER_HA = 0.1

/** Working bulk density of dry dressing sand, kg/m3 (Woods 2020). Others in print: 1560, 1600, 1630; all within a tenth. */
export const WORKING_SAND_DENSITY_KG_PER_M3 = 1500

/** Depth in mm of one of each volume unit. */
const MM_PER_VOLUME_UNIT = { mm: 1, 'L/m2': 1, 'ft3/1000ft2': MM_PER_FT3_PER_1000_FT2 } as const

/** kg/m2 in one of each mass unit. */
const KG_PER_M2_PER_MASS_UNIT = {
  'kg/m2': 1,
  'lb/1000ft2': KG_PER_M2_PER_LB_PER_1000_FT2,
  't/ha': KG_PER_M2_PER_T_PER_HA,
} as const

const RATE_UNITS = ['mm', 'kg/m2', 'L/m2', 'ft3/1000ft2', 'lb/1000ft2', 't/ha'] as const

/** A unit that sand rates come in. */
export type RateUnit = (typeof RATE_UNITS)[number]

const isVolumeUnit = (unit: RateUnit): unit is keyof typeof MM_PER_VOLUME_UNIT => unit in MM_PER_VOLUME_UNIT

/** Mass of a sand depth, kg/m2: `m = h rho / 1000`, h in mm, rho in kg/m3 (Woods 2020). */
export const massKgPerM2Of = (depthMm: number, bulkDensityKgPerM3: number): number =>
  (depthMm * bulkDensityKgPerM3) / 1000

/** Depth of a sand mass, mm: `h = 1000 m / rho`, m in kg/m2, rho in kg/m3 (Woods 2020). */
export const depthMmOf = (massKgPerM2: number, bulkDensityKgPerM3: number): number =>
  (1000 * massKgPerM2) / bulkDensityKgPerM3

/** Any sand rate as a depth in mm; masses go by the bulk density in kg/m3. */
export const rateAsDepthMm = (value: number, unit: RateUnit, bulkDensityKgPerM3: number): number =>
  isVolumeUnit(unit)
    ? value * MM_PER_VOLUME_UNIT[unit]
    : depthMmOf(value * KG_PER_M2_PER_MASS_UNIT[unit], bulkDensityKgPerM3)

export const bulkDensityKgPerM3 = quantity({
  meaning: 'Bulk density of the dry sand',
  unit: 'kg/m3',
  symbol: 'rho',
  min: 800,
  max: 2500,
})

const sandDepthMm = quantity({ meaning: 'Depth of sand', unit: 'mm', symbol: 'h', min: 0, max: 1000 })

/** `sand.massFromDepth`: what a depth of sand weighs. */
export const sandMassFromDepth = item({
  name: 'sand.massFromDepth',
  title: 'Mass of a depth of sand',
  words: 'One millimetre on a square metre is one litre; a litre weighs the bulk density.',
  formula: 'm = h rho / 1000',
  evidence: 'handbook',
  sources: ['woodsExactDepth2020', 'woodsReduction2021'],
  notes: [
    'Bulk densities in print: 1500 (working value), 1560, 1600 (100 lb/ft3) and 1630 kg/m3; any is within about 10 %.',
  ],
  inputs: v.strictObject({ depthMm: sandDepthMm, bulkDensityKgPerM3 }),
  outputs: v.strictObject({
    massKgPerM2: figure({ meaning: 'Dry mass of sand', unit: 'kg/m2', symbol: 'm' }),
  }),
  checks: SAND_MASS_FROM_DEPTH_CHECKS,
  run: ({ depthMm, bulkDensityKgPerM3 }) => ok({ massKgPerM2: massKgPerM2Of(depthMm, bulkDensityKgPerM3) }),
})

/** `sand.depthFromMass`: how deep a mass of sand lies. */
export const sandDepthFromMass = item({
  name: 'sand.depthFromMass',
  title: 'Depth of a mass of sand',
  words: 'Mass on a square metre divided by the bulk density.',
  formula: 'h = 1000 m / rho',
  evidence: 'handbook',
  sources: ['woodsExactDepth2020'],
  inputs: v.strictObject({
    massKgPerM2: quantity({ meaning: 'Dry mass of sand', unit: 'kg/m2', symbol: 'm', min: 0, max: 2500 }),
    bulkDensityKgPerM3,
  }),
  outputs: v.strictObject({ depthMm: figure({ meaning: 'Depth of sand', unit: 'mm', symbol: 'h' }) }),
  checks: SAND_DEPTH_FROM_MASS_CHECKS,
  run: ({ massKgPerM2, bulkDensityKgPerM3 }) => ok({ depthMm: depthMmOf(massKgPerM2, bulkDensityKgPerM3) }),
})

/** `sand.convertRate`: one sand rate in all the units of the trade. */
export const sandConvertRate = item({
  name: 'sand.convertRate',
  title: 'A sand rate in other units',
  words:
    'Depths and volumes turn into each other exactly; masses go by the bulk density of the sand, 1500 kg/m3 unless another is given.',
  formula:
    'mm = L/m2 = 0.3048 x ft3/1000 ft2; kg/m2 = mm x rho / 1000 = 0.0048824 x lb/1000 ft2 = 0.1 x t/ha',
  evidence: 'handbook',
  sources: ['woodsSandGrowth2017', 'woodsExactDepth2020', 'woodsCoreOrNot2019', 'sandMath2011'],
  notes: ['Tonnes are metric (1000 kg), pounds 0.45359237 kg, feet 0.3048 m.'],
  inputs: v.strictObject({
    value: quantity({ meaning: 'The rate, in the unit given', unit: 'of the rate', min: 0, max: 500_000 }),
    unit: choice('Unit of the rate', RATE_UNITS),
    bulkDensityKgPerM3: v.optional(bulkDensityKgPerM3, WORKING_SAND_DENSITY_KG_PER_M3),
  }),
  outputs: v.strictObject({
    depthMm: figure({ meaning: 'Depth of sand', unit: 'mm' }),
    massKgPerM2: figure({ meaning: 'Dry mass of sand', unit: 'kg/m2' }),
    litresPerM2: figure({ meaning: 'Volume of sand', unit: 'L/m2' }),
    ft3Per1000Ft2: figure({ meaning: 'Volume of sand', unit: 'ft3/1000 ft2' }),
    lbPer1000Ft2: figure({ meaning: 'Dry mass of sand', unit: 'lb/1000 ft2' }),
    tPerHa: figure({ meaning: 'Dry mass of sand', unit: 't/ha' }),
    bulkDensityKgPerM3: figure({ meaning: 'Bulk density that masses went by', unit: 'kg/m3' }),
  }),
  checks: [
    ...SAND_CONVERT_RATE_CHECKS,
    {
      id: 'CR053',
      class: 'published',
      source: 'sandMath2011',
      where: 'an inch over 1000 ft2 is 3.1 cubic yards (27 ft3 each)',
      input: { value: 25.4, unit: 'mm' },
      output: 'ft3Per1000Ft2',
      factor: 1 / 27,
      expected: 3.1,
      tolerance: 0.02,
    },
    {
      id: 'rate-heavy',
      class: 'published',
      source: 'ervinNichols2010',
      where: 'heavy dressing at coring: 12 ft3/1000 ft2 is 1200 lb (100 lb/ft3 = 1601.85 kg/m3)',
      input: { value: 12, unit: 'ft3/1000ft2', bulkDensityKgPerM3: 1601.846 },
      output: 'lbPer1000Ft2',
      expected: 1200,
      tolerance: 0.1,
    },
  ],
  run: ({ value, unit, bulkDensityKgPerM3 }) => {
    const depthMm = rateAsDepthMm(value, unit, bulkDensityKgPerM3)
    const massKgPerM2 = massKgPerM2Of(depthMm, bulkDensityKgPerM3)
    return ok({
      depthMm,
      massKgPerM2,
      litresPerM2: depthMm,
      ft3Per1000Ft2: depthMm / MM_PER_FT3_PER_1000_FT2,
      lbPer1000Ft2: massKgPerM2 / KG_PER_M2_PER_LB_PER_1000_FT2,
      tPerHa: massKgPerM2 / KG_PER_M2_PER_T_PER_HA,
      bulkDensityKgPerM3,
    })
  },
})

/** The unit conversions of sand. */
export const SAND_RATE_ITEMS = [sandMassFromDepth, sandDepthFromMass, sandConvertRate]
