import {
  coringRemoval,
  runItem,
  scarifyingRemoval,
  type Course,
  type Green,
  type MachineKind,
  type Operation,
  type PrescriptionGroup,
} from '@swardwright/engine'
import type { WhereFrom } from '../state/where-from.ts'
import {
  blades,
  coresOutFrom,
  groovesOutFrom,
  sandFrom,
  shareOpenedFrom,
  tineSteps,
  workingProfile,
} from './from-catalogue.ts'

/** Dry tonnes: low, likely, high. */
export type BandT = { readonly lowT: number; readonly likelyT: number; readonly highT: number }

/** One step of the chain on one green, with the quickest machine that can do it. */
export type StepFigures = {
  readonly operation: Operation
  readonly pass: number
  readonly load: number | null
  /** Minutes with the quickest machine; 0 where the course has none. */
  readonly minutes: number
  readonly machineKind: MachineKind | null
}

/** What is taken out of a green. */
export type TakenOut = {
  /** Organic matter, kg on the whole green. */
  readonly organicKg: number
  /** Dry matter, t on the whole green. */
  readonly dryT: number
  readonly notTestedBelowMm: number | null
}

/** Everything that the prescription means for one green, as plain data for the pages. */
export type GreenFigures = {
  readonly green: string
  readonly group: string
  readonly areaM2: number
  readonly shareSummed: number
  readonly shareTouched: number
  readonly coresL: number
  /** Null where the green has no organic-matter test, and then nothing can be said. */
  readonly out: TakenOut | null
  readonly sand: BandT & { readonly loads: number }
  readonly steps: readonly StepFigures[]
  /** Minutes of all steps, one after the other, waits left out. */
  readonly workMin: number
  /** Waits between steps that the chain itself names, minutes. */
  readonly waitMin: number
  readonly from: {
    readonly share: WhereFrom | null
    readonly sand: WhereFrom | null
    readonly coresOut: WhereFrom | null
    readonly groovesOut: WhereFrom | null
  }
}

/** What the engine derives for one green; the part that the figures read. */
export type WorkOnGreen = {
  readonly green: Green
  readonly group: PrescriptionGroup
  readonly opened: {
    readonly coreVolumeLPerM2: number
    readonly areaShareSummed: number
    readonly areaShareUnion: number
  }
  readonly sand: {
    readonly bandT: { readonly low: number; readonly likely: number; readonly high: number }
    readonly loads: number
  }
  readonly steps: readonly {
    readonly operation: Operation
    readonly pass: number
    readonly load: number | null
    readonly minutesByMachine: ReadonlyMap<string, number>
    readonly lagMin: number
  }[]
}

type Removal = { readonly organicGPerM2: number; readonly dryMassGPerM2: number }

/** The two items by name: to ask the whole catalogue would load all of it at the first visit. */
const removal = (from: WhereFrom | null): Removal => {
  if (from === null) return { organicGPerM2: 0, dryMassGPerM2: 0 }
  const answer =
    from.item === coringRemoval.name
      ? runItem(coringRemoval, from.input)
      : runItem(scarifyingRemoval, from.input)
  return answer.ok ? answer.value : { organicGPerM2: NaN, dryMassGPerM2: NaN }
}

const G_PER_KG = 1000
const KG_PER_T = 1000

/** What cores and grooves take out, added up; the machine’s own catalogue items say how much. */
const takenOut = (
  green: Green,
  group: PrescriptionGroup,
): {
  readonly out: TakenOut | null
  readonly cores: WhereFrom | null
  readonly grooves: WhereFrom | null
} => {
  const tines = tineSteps(group)
  const deepest = Math.max(0, ...tines.map((step) => step.tines.depthMm), blades(group)?.blades.depthMm ?? 0)
  const profile = workingProfile(green, deepest)
  if (profile === null) return { out: null, cores: null, grooves: null }
  const cores = tines.map((step) => coresOutFrom(green, step, profile))
  const grooves = groovesOutFrom(group, profile)
  const removals = [...cores, grooves].map(removal)
  const organicG = removals.reduce((sum, one) => sum + one.organicGPerM2, 0) * green.areaM2
  const dryG = removals.reduce((sum, one) => sum + one.dryMassGPerM2, 0) * green.areaM2
  return {
    out: {
      organicKg: organicG / G_PER_KG,
      dryT: dryG / G_PER_KG / KG_PER_T,
      notTestedBelowMm: profile.notTestedBelowMm,
    },
    cores: cores[0] ?? null,
    grooves,
  }
}

const quickest = (course: Course, minutesByMachine: ReadonlyMap<string, number>) => {
  const [best] = [...minutesByMachine].sort((a, b) => a[1] - b[1])
  return {
    minutes: best?.[1] ?? 0,
    machineKind: course.machines.find((machine) => machine.id === best?.[0])?.kind ?? null,
  }
}

/** What the prescription means for one green, in the figures that the pages show. */
export const greenFigures = (course: Course, work: WorkOnGreen): GreenFigures => {
  const { green, group, opened, sand } = work
  const { out, cores, grooves } = takenOut(green, group)
  const steps = work.steps.map((step): StepFigures => ({
    operation: step.operation,
    pass: step.pass,
    load: step.load,
    ...quickest(course, step.minutesByMachine),
  }))
  const firstTines = tineSteps(group)[0]
  const workedBack = group.cores === 'breakUp' ? group.workedBackShare * opened.coreVolumeLPerM2 : 0
  return {
    green: green.id,
    group: group.id,
    areaM2: green.areaM2,
    shareSummed: opened.areaShareSummed,
    shareTouched: opened.areaShareUnion,
    coresL: opened.coreVolumeLPerM2 * green.areaM2,
    out,
    sand: { lowT: sand.bandT.low, likelyT: sand.bandT.likely, highT: sand.bandT.high, loads: sand.loads },
    steps,
    workMin: steps.reduce((sum, step) => sum + step.minutes, 0),
    waitMin: work.steps.reduce((sum, step) => sum + step.lagMin, 0),
    from: {
      share: firstTines === undefined ? null : shareOpenedFrom(firstTines),
      sand: sandFrom(course, green, group, workedBack),
      coresOut: cores,
      groovesOut: grooves,
    },
  }
}
