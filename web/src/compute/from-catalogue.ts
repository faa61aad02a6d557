import type { Course, Green, PrescriptionGroup } from '@swardwright/engine'
import type { WhereFrom } from '../state/where-from.ts'

type Step = PrescriptionGroup['chain'][number]
type Tines = NonNullable<Step['tines']>
type Layer = Green['organicTests'][number]['layers'][number]

/** A profile long enough for the work, and where it stops being tested. */
export type WorkingProfile = {
  readonly layers: readonly Layer[]
  /** Below this the deepest tested layer is carried on; null where the tests reach deep enough. */
  readonly notTestedBelowMm: number | null
}

/** The latest laboratory result of a green. */
export const latestTest = (green: Green): Green['organicTests'][number] | undefined =>
  green.organicTests.toSorted((a, b) => (a.date < b.date ? -1 : 1)).at(-1)

/** The tested layers, carried on downward where the work goes deeper than the tests: a rough figure, told as such. */
export const workingProfile = (green: Green, depthMm: number): WorkingProfile | null => {
  const layers = latestTest(green)?.layers.toSorted((a, b) => a.fromMm - b.fromMm)
  const deepest = layers?.at(-1)
  if (layers === undefined || deepest === undefined) return null
  if (deepest.toMm >= depthMm) return { layers, notTestedBelowMm: null }
  return {
    layers: [...layers, { fromMm: deepest.toMm, toMm: depthMm, organicPercent: deepest.organicPercent }],
    notTestedBelowMm: deepest.toMm,
  }
}

/** The steps that make holes. */
export const tineSteps = (group: PrescriptionGroup): readonly (Step & { readonly tines: Tines })[] =>
  group.chain.flatMap((step) => (step.tines === undefined ? [] : [{ ...step, tines: step.tines }]))

/** Blades of the group and how often they run over the green; steps with other blades than the first are left to the engine. */
export const blades = (
  group: PrescriptionGroup,
): { readonly blades: NonNullable<Step['blades']>; readonly passes: number } | null => {
  const steps = group.chain.filter((step) => step.blades !== undefined)
  const first = steps[0]?.blades
  return first === undefined
    ? null
    : { blades: first, passes: steps.reduce((sum, step) => sum + step.passes, 0) }
}

const groovesInput = (group: PrescriptionGroup) => {
  const cut = blades(group)
  return cut === null ? null : { ...cut.blades, passes: cut.passes, crossed: cut.passes > 1 }
}

/** The share that the tines open, as the catalogue answers it. */
export const shareOpenedFrom = (step: Step & { readonly tines: Tines }): WhereFrom => ({
  item: 'tining.areaShare',
  input: {
    holeDiameterMm: step.tines.holeDiameterMm,
    acrossMm: step.tines.acrossMm,
    alongMm: step.tines.alongMm,
    passes: step.passes,
  },
  output: 'areaShareSummed',
})

/** What the cores take out of a green, as the catalogue answers it. Null for solid tines. */
export const coresOutFrom = (
  green: Green,
  step: Step & { readonly tines: Tines },
  profile: WorkingProfile,
): WhereFrom | null =>
  step.tines.coreDiameterMm === 0
    ? null
    : {
        item: 'coring.removal',
        input: {
          coreDiameterMm: step.tines.coreDiameterMm,
          acrossMm: step.tines.acrossMm,
          alongMm: step.tines.alongMm,
          depthMm: step.tines.depthMm,
          layers: profile.layers,
          passes: step.passes,
          areaM2: green.areaM2,
        },
        output: 'organicGPerM2',
      }

/** What the scarifier takes out of a green, as the catalogue answers it. */
export const groovesOutFrom = (group: PrescriptionGroup, profile: WorkingProfile): WhereFrom | null => {
  const grooves = groovesInput(group)
  return grooves === null
    ? null
    : { item: 'scarifying.removal', input: { ...grooves, layers: profile.layers }, output: 'organicGPerM2' }
}

/** Sand for a green, as the catalogue answers it; null where the chain has no tines or several settings of them. */
export const sandFrom = (
  course: Course,
  green: Green,
  group: PrescriptionGroup,
  workedBackLPerM2: number,
): WhereFrom | null => {
  const [step, second] = tineSteps(group)
  if (step === undefined || second !== undefined) return null
  const { setLifeGreens: _life, ...hole } = step.tines
  const grooves = groovesInput(group)
  const hoppers = course.machines.flatMap((machine) =>
    machine.kind === 'dresser' && machine.hopperT !== undefined ? [machine.hopperT] : [],
  )
  const { sand } = group
  return {
    item: 'sand.need',
    input: {
      areaM2: green.areaM2,
      hole: { ...hole, passes: step.passes },
      ...(grooves === null ? {} : { grooves }),
      surfaceMm: sand.surfaceMm,
      workedBackLPerM2,
      fillFactor: sand.fillFactor,
      lossPercent: sand.lossPercent,
      bulkDensityKgPerM3: sand.bulkDensityKgPerM3,
      moisturePercentDryBasis: sand.moisturePercent,
      ...(hoppers.length === 0 ? {} : { hopperT: Math.min(...hoppers) }),
    },
    output: 'likelyT',
  }
}
