import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, figureOrNull, quantity, wordsOrNull } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import {
  COMPOST_MASS_FOR_RATIO_CHECKS,
  COMPOST_MIX_CHECKS,
  COMPOST_MOISTURE_CHECKS,
} from './compost-checks.ts'

const percent = (meaning: string, symbol: string) =>
  quantity({ meaning, unit: '%', symbol, min: 0, max: 100 })
const moisturePercent = percent('Water, percent of the wet mass', 'M')
const carbonPercent = percent('Carbon, percent of the dry mass', 'C')
const nitrogenPercent = percent('Nitrogen, percent of the dry mass', 'N')
const massKg = quantity({ meaning: 'Wet mass', unit: 'kg', symbol: 'Q', min: 0, max: 1e7 })
const massKgOut = figure({ meaning: 'Wet mass to add', unit: 'kg', symbol: 'Q2' })

/** `compost.moisture`: water in a sample. */
export const compostMoisture = item({
  name: 'compost.moisture',
  title: 'Moisture of a compost material',
  words:
    'Weigh a sample wet, dry it, weigh it again. What is gone is water, as a percentage of the wet mass.',
  formula: 'M = 100 (wet - dry) / wet',
  evidence: 'handbook',
  sources: ['cornellMoisture'],
  notes: ['On the wet basis, unlike the moisture of sand.'],
  inputs: v.strictObject({
    wetMassG: quantity({ meaning: 'Mass before drying', unit: 'g', min: 0.001, max: 1e7 }),
    dryMassG: quantity({ meaning: 'Mass after drying', unit: 'g', min: 0, max: 1e7 }),
  }),
  outputs: v.strictObject({
    moisturePercent: figure({ meaning: 'Water, percent of the wet mass', unit: '%', symbol: 'M' }),
  }),
  checks: COMPOST_MOISTURE_CHECKS,
  run: ({ wetMassG, dryMassG }) =>
    dryMassG > wetMassG
      ? notDefined(
          'dryMassG',
          'g',
          `the dry sample weighs ${dryMassG} g but the wet one only ${wetMassG} g; drying cannot add mass`,
        )
      : ok({ moisturePercent: (100 * (wetMassG - dryMassG)) / wetMassG }),
})

type Material = {
  readonly massKg: number
  readonly moisturePercent: number
  readonly carbonPercent?: number | undefined
  readonly nitrogenPercent?: number | undefined
}

/** Carbon over nitrogen of a mix, or the reason why there is none. */
const ratioOfMix = (
  materials: readonly Material[],
): { readonly value: number | null; readonly reason: string | null } => {
  const without = materials.findIndex((m) => m.carbonPercent === undefined || m.nitrogenPercent === undefined)
  if (without >= 0)
    return { value: null, reason: `material ${without + 1} has no carbonPercent or nitrogenPercent` }
  const total = (percentOf: (m: Material) => number) =>
    materials.reduce((sum, m) => sum + m.massKg * (100 - m.moisturePercent) * percentOf(m), 0)
  const nitrogen = total((m) => m.nitrogenPercent ?? 0)
  if (nitrogen <= 0) return { value: null, reason: 'there is no nitrogen in the mix' }
  const value = total((m) => m.carbonPercent ?? 0) / nitrogen
  return Number.isFinite(value)
    ? { value, reason: null }
    : { value: null, reason: 'there is next to no nitrogen in the mix' }
}

/** `compost.mix`: moisture and carbon to nitrogen of a heap. */
export const compostMix = item({
  name: 'compost.mix',
  title: 'Moisture and carbon to nitrogen of a mix',
  words: 'Water of all materials over their mass; carbon of all dry matter over its nitrogen.',
  formula: 'M = sum(Q M) / sum(Q); C:N = sum(Q C (100 - M)) / sum(Q N (100 - M))',
  evidence: 'handbook',
  sources: ['cornellMoisture', 'cornellRatio'],
  notes: [
    'Goals: about 30 : 1 at the start, near 10 : 1 at the end; moisture 55 to 60 % at most, slow below 35 to 40 %, still below 30 %.',
    'Lists differ on grass: 17, 19 or 20 : 1. Cores are mostly sand: only their organic matter shrinks, so no general shrinkage applies to them.',
  ],
  inputs: v.strictObject({
    materials: v.pipe(
      v.array(
        v.strictObject({
          massKg,
          moisturePercent,
          carbonPercent: v.optional(carbonPercent),
          nitrogenPercent: v.optional(nitrogenPercent),
        }),
      ),
      v.minLength(1),
      v.maxLength(100),
      v.description('What goes on the heap'),
    ),
  }),
  outputs: v.strictObject({
    moisturePercent: figure({ meaning: 'Water in the mix, percent of its wet mass', unit: '%', symbol: 'M' }),
    carbonToNitrogen: figureOrNull({ meaning: 'Carbon to nitrogen', unit: '1', symbol: 'C:N' }),
    carbonToNitrogenReason: wordsOrNull('Why there is no carbon to nitrogen'),
  }),
  checks: [
    ...COMPOST_MIX_CHECKS,
    {
      id: 'mix-moisture',
      class: 'published',
      source: 'cornellMoisture',
      where: '10 kg of clippings at 77 % and 6.8 kg of leaves at 35 %: 60 %',
      input: {
        materials: [
          { massKg: 10, moisturePercent: 77 },
          { massKg: 6.8, moisturePercent: 35 },
        ],
      },
      output: 'moisturePercent',
      expected: 60,
      tolerance: 0.05,
    },
  ],
  run: ({ materials }) => {
    const mass = materials.reduce((sum, m) => sum + m.massKg, 0)
    if (mass <= 0)
      return notDefined('materials', 'kg', 'the materials weigh nothing together; give a mass above 0 kg')
    const ratio = ratioOfMix(materials)
    return ok({
      moisturePercent: materials.reduce((sum, m) => sum + m.massKg * m.moisturePercent, 0) / mass,
      carbonToNitrogen: ratio.value,
      carbonToNitrogenReason: ratio.reason,
    })
  },
})

/** `compost.massForMoisture`: how much of a second material brings the moisture right. */
export const compostMassForMoisture = item({
  name: 'compost.massForMoisture',
  title: 'Material to add for a moisture',
  words:
    'The mixing rule turned round: how much of a drier (or wetter) material brings the heap to the moisture wanted.',
  formula: 'Q2 = Q1 (G - M1) / (M2 - G)',
  evidence: 'handbook',
  sources: ['cornellMoisture'],
  inputs: v.strictObject({
    have: v.strictObject({ massKg, moisturePercent }),
    add: v.strictObject({ moisturePercent }),
    moisturePercent: percent('Moisture wanted, percent of the wet mass', 'G'),
  }),
  outputs: v.strictObject({ massKg: massKgOut }),
  checks: [
    {
      id: 'leaves-for-60',
      class: 'published',
      source: 'cornellMoisture',
      where: '10 kg of clippings at 77 %, leaves at 35 %, goal 60 %: 6.8 kg of leaves',
      input: {
        have: { massKg: 10, moisturePercent: 77 },
        add: { moisturePercent: 35 },
        moisturePercent: 60,
      },
      output: 'massKg',
      expected: 6.8,
      tolerance: 0.05,
    },
  ],
  run: ({ have, add, moisturePercent: wanted }) => {
    const missing = wanted - have.moisturePercent
    const gain = add.moisturePercent - wanted
    if (missing === 0) return ok({ massKg: 0 })
    if (missing * gain <= 0 || Math.abs(gain) < 1e-6)
      return notDefined(
        'moisturePercent',
        '%',
        `${wanted} % cannot be reached: it must lie between the heap (${have.moisturePercent} %) and what is added (${add.moisturePercent} %)`,
      )
    return ok({ massKg: (have.massKg * missing) / gain })
  },
})

/** `compost.massForRatio`: how much of a second material brings carbon to nitrogen right. */
export const compostMassForRatio = item({
  name: 'compost.massForRatio',
  title: 'Material to add for a carbon to nitrogen',
  words:
    'How much of a material rich in carbon (or nitrogen) brings the heap to the ratio wanted, by the dry matter of both.',
  formula: 'Q2 = Q1 (R N1 - C1) (100 - M1) / ((C2 - R N2) (100 - M2))',
  evidence: 'handbook',
  sources: ['cornellRatio'],
  notes: [
    'Variables as printed; the equation is from memory and its arithmetic agrees with the printed example.',
  ],
  inputs: v.strictObject({
    have: v.strictObject({ massKg, moisturePercent, carbonPercent, nitrogenPercent }),
    add: v.strictObject({ moisturePercent, carbonPercent, nitrogenPercent }),
    carbonToNitrogen: quantity({
      meaning: 'Carbon to nitrogen wanted',
      unit: '1',
      symbol: 'R',
      min: 1,
      max: 1000,
    }),
  }),
  outputs: v.strictObject({ massKg: massKgOut }),
  checks: COMPOST_MASS_FOR_RATIO_CHECKS,
  run: ({ have, add, carbonToNitrogen: wanted }) => {
    const shortKg =
      have.massKg * (wanted * have.nitrogenPercent - have.carbonPercent) * (100 - have.moisturePercent)
    const gain = (add.carbonPercent - wanted * add.nitrogenPercent) * (100 - add.moisturePercent)
    if (shortKg === 0) return ok({ massKg: 0 })
    if (shortKg * gain <= 0 || Math.abs(gain) < 1e-6)
      return notDefined(
        'carbonToNitrogen',
        '1',
        `${wanted} : 1 cannot be reached: it must lie between the heap (${have.carbonPercent} / ${have.nitrogenPercent}) and dry matter of what is added (${add.carbonPercent} / ${add.nitrogenPercent})`,
      )
    return ok({ massKg: shortKg / gain })
  },
})

/** Composting of cores and clippings. */
export const COMPOST_ITEMS = [compostMoisture, compostMix, compostMassForMoisture, compostMassForRatio]
