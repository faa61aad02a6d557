import * as v from 'valibot'
import { count, quantity } from '../catalogue/quantity.ts'
import { id, tineDiameters } from '../course/course.ts'
import { EFFECTS, OPERATIONS } from './operations.ts'

/** Hollow or solid tines as set for a group of greens. Outside makes the hole, inside takes the core (0 for solid). */
export const tineSetting = v.object({
  ...tineDiameters,
  acrossMm: quantity({ meaning: 'Distance between holes across the machine', unit: 'mm', min: 10, max: 300 }),
  alongMm: quantity({ meaning: 'Distance between holes along the run', unit: 'mm', min: 10, max: 300 }),
  depthMm: quantity({ meaning: 'Depth of the hole', unit: 'mm', min: 5, max: 400 }),
  setLifeGreens: quantity({ meaning: 'Greens that one set of tines lasts', unit: '1', min: 1, max: 200 }),
})

/** Scarifier blades as set. */
export const bladeSetting = v.object({
  bladeWidthMm: quantity({ meaning: 'Width of a blade: the groove', unit: 'mm', min: 0.5, max: 10 }),
  bladeSpacingMm: quantity({ meaning: 'Distance between blades', unit: 'mm', min: 5, max: 100 }),
  depthMm: quantity({ meaning: 'Depth of the groove', unit: 'mm', min: 1, max: 60 }),
})

/** One step of the chain: `passes` coverings of the whole green, each a task of its own. */
export const chainStep = v.object({
  operation: v.picklist(OPERATIONS),
  passes: count({ meaning: 'Coverings of the whole green', min: 1, max: 6 }),
  effects: v.array(v.picklist(EFFECTS)),
  tines: v.optional(tineSetting),
  blades: v.optional(bladeSetting),
  /** True when the sand on the green must be dry before this step. */
  drySand: v.optional(v.boolean()),
  waitMin: v.optional(count({ meaning: 'Wait after the step before', min: 0, max: 2880 })),
  nextDay: v.optional(v.boolean()),
})

/** The sand that goes on. */
export const sandSetting = v.object({
  kind: v.picklist(['damp', 'kilnDried']),
  surfaceMm: quantity({ meaning: 'Sand left on the surface', unit: 'mm', min: 0, max: 12 }),
  fillFactor: quantity({
    meaning: "Share of the holes' volume that takes sand in practice",
    unit: '1',
    min: 0.3,
    max: 1.2,
  }),
  lossPercent: quantity({ meaning: 'Sand thrown beyond the green or spilled', unit: '%', min: 0, max: 50 }),
  bulkDensityKgPerM3: quantity({
    meaning: 'Bulk density of the dry sand',
    unit: 'kg/m3',
    min: 1000,
    max: 2000,
  }),
  moisturePercent: quantity({ meaning: 'Water in the sand, of its dry mass', unit: '%', min: 0, max: 20 }),
})

/** What is done to a group of greens. */
export const prescriptionGroup = v.object({
  id,
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(120)),
  greens: v.union([v.literal('all'), v.pipe(v.array(id), v.minLength(1))]),
  cores: v.picklist(['lift', 'breakUp']),
  /** Share of what was taken out that is sand good enough to be worked back (cores broken up on a sand green); 0 when all is lifted. */
  workedBackShare: quantity({
    meaning: 'Share of the cores worked back as sand',
    unit: '1',
    min: 0,
    max: 0.95,
  }),
  sand: sandSetting,
  chain: v.pipe(v.array(chainStep), v.minLength(1)),
})

/** The whole prescription. A green takes the first group that names it; 'all' takes the rest. Version 1. */
export const prescription = v.object({
  version: v.literal(1),
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(120)),
  groups: v.pipe(v.array(prescriptionGroup), v.minLength(1)),
})

export type TineSetting = Readonly<v.InferOutput<typeof tineSetting>>
export type BladeSetting = Readonly<v.InferOutput<typeof bladeSetting>>
export type ChainStep = Readonly<v.InferOutput<typeof chainStep>>
export type SandSetting = Readonly<v.InferOutput<typeof sandSetting>>
export type PrescriptionGroup = Readonly<v.InferOutput<typeof prescriptionGroup>>
export type Prescription = Readonly<v.InferOutput<typeof prescription>>
