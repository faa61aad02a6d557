import * as v from 'valibot'
import { count, quantity } from '../catalogue/quantity.ts'

/** Square millimetres in a square metre. */
export const MM2_PER_M2 = 1_000_000

export const holeDiameterMm = quantity({
  meaning: 'Diameter of the hole: the outside of the tine',
  unit: 'mm',
  symbol: 'd',
  min: 1,
  max: 100,
})

export const coreDiameterMm = quantity({
  meaning: 'Diameter of the core: the inside of the hollow tine',
  unit: 'mm',
  symbol: 'dc',
  min: 1,
  max: 100,
})

export const depthMm = quantity({ meaning: 'Working depth', unit: 'mm', symbol: 'h', min: 1, max: 1000 })

export const passes = v.optional(
  count({ meaning: 'Number of passes over the whole green', symbol: 'n', min: 1, max: 50 }),
  1,
)

export const areaM2 = quantity({
  meaning: 'Area of the green',
  unit: 'm2',
  symbol: 'S',
  min: 1,
  max: 100_000,
})

/** Spacing of holes, either as the two distances between them or as a count per square metre. */
export const spacing = {
  acrossMm: v.optional(
    quantity({
      meaning: 'Distance between holes across the machine',
      unit: 'mm',
      symbol: 'a',
      min: 5,
      max: 1000,
    }),
  ),
  alongMm: v.optional(
    quantity({ meaning: 'Distance between holes along the run', unit: 'mm', symbol: 'b', min: 5, max: 1000 }),
  ),
  holesPerM2: v.optional(
    quantity({ meaning: 'Holes per square metre', unit: '1/m2', symbol: 'N', min: 0.1, max: 40_000 }),
  ),
}
