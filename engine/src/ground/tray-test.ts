import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { fail, ok } from '../result.ts'

const GRAMS_PER_KG = 1000

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/** Coefficient of variation of a sample, %. `CV = 100 s / m`, `s^2 = sum (x - m)^2 / (n - 1)` */
const variationPercent = (values: readonly number[]): number => {
  const m = mean(values)
  const squares = values.reduce((sum, value) => sum + (value - m) ** 2, 0)
  return (100 * Math.sqrt(squares / (values.length - 1))) / m
}

/** Christiansen's coefficient of uniformity, %. `CU = 100 (1 - sum |x - m| / (n m))` (Christiansen 1942, for sprinklers; the same sum). */
const uniformityPercent = (values: readonly number[]): number => {
  const m = mean(values)
  return 100 * (1 - values.reduce((sum, value) => sum + Math.abs(value - m), 0) / (values.length * m))
}

/** Trays of 10, 12, 8 and 10 g on 0.1 m2: m = 10 g; squares 0 + 4 + 4 + 0 = 8, s = sqrt(8 / 3) = 1.63299; |x - m| sum 4. */
const BY_HAND = { massesG: [10, 12, 8, 10], trayAreaM2: 0.1 }

/** `dressing.trayTest`: what a dresser really spreads, from trays laid across its path. */
export const trayTest = item({
  name: 'dressing.trayTest',
  title: 'Tray test of a dresser',
  words:
    'Lay equal trays across the path, spread as you would on the green with neighbouring runs included, and weigh each. The mean over the tray area is the rate; the spread between trays says how even it is.',
  formula: 'rate = m / A; CV = 100 s / m; CU = 100 (1 - sum |x - m| / (n m))',
  evidence: 'handbook',
  sources: ['christiansen1942', 'geometry'],
  notes: [
    'Trays must be those of the whole overlapped pattern: a single run falls off to its sides and looks worse than it is.',
    'Sand bounces out of shallow trays; a grid or a deep tray reads truer (common practice, no source).',
  ],
  inputs: v.object({
    massesG: v.pipe(
      v.array(quantity({ meaning: 'Sand in one tray', unit: 'g', min: 0, max: 20_000, symbol: 'x' })),
      v.minLength(2),
      v.maxLength(200),
    ),
    trayAreaM2: quantity({ meaning: 'Area of one tray', unit: 'm2', min: 0.01, max: 4, symbol: 'A' }),
  }),
  outputs: v.object({
    rateKgPerM2: figure({ meaning: 'Mean rate spread', unit: 'kg/m2' }),
    variationPercent: figure({ meaning: 'Coefficient of variation between trays', unit: '%', symbol: 'CV' }),
    uniformityPercent: figure({ meaning: 'Coefficient of uniformity', unit: '%', symbol: 'CU' }),
    lowestShare: figure({ meaning: 'Lightest tray over the mean', unit: '1' }),
    highestShare: figure({ meaning: 'Heaviest tray over the mean', unit: '1' }),
  }),
  checks: [
    {
      id: 'TT001',
      class: 'derived',
      source: 'geometry',
      where: '10 g on 0.1 m2 = 0.1 kg/m2',
      input: BY_HAND,
      output: 'rateKgPerM2',
      expected: 0.1,
      tolerance: 1e-9,
    },
    {
      id: 'TT002',
      class: 'derived',
      source: 'geometry',
      where: '100 x sqrt(8 / 3) / 10 = 16.3299 %',
      input: BY_HAND,
      output: 'variationPercent',
      expected: 16.3299,
      tolerance: 1e-4,
    },
    {
      id: 'TT003',
      class: 'derived',
      source: 'christiansen1942',
      where: '100 x (1 - 4 / (4 x 10)) = 90 %, the 1942 formula on four trays by hand',
      input: BY_HAND,
      output: 'uniformityPercent',
      expected: 90,
      tolerance: 1e-9,
    },
  ],
  run: ({ massesG, trayAreaM2 }) => {
    const meanG = mean(massesG)
    if (meanG === 0)
      return fail({
        type: 'notDefined',
        field: 'massesG',
        unit: 'g',
        reason: 'all trays are empty, so evenness has no meaning',
      })
    return ok({
      rateKgPerM2: meanG / GRAMS_PER_KG / trayAreaM2,
      variationPercent: variationPercent(massesG),
      uniformityPercent: uniformityPercent(massesG),
      lowestShare: Math.min(...massesG) / meanG,
      highestShare: Math.max(...massesG) / meanG,
    })
  },
})
