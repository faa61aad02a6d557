import type { Course, MachineKind, SandStore } from '@swardwright/engine'
import type { BandT, GreenFigures } from './figures.ts'

/** Hours that one kind of machine works, and what that is for each of them. */
export type MachineHours = {
  readonly kind: MachineKind
  readonly machines: number
  readonly minutes: number
  readonly minutesEach: number
  /** The kind whose machines work longest: nothing is sooner done than it is. */
  readonly bottleneck: boolean
}

/** Sand of one kind: what the prescription takes, against what lies in the bay. */
export type SandTotals = BandT & {
  readonly kind: SandStore['kind']
  readonly loads: number
  readonly greens: number
}

/** The whole course in a few figures. */
export type CourseTotals = {
  readonly greens: number
  readonly areaM2: number
  /** Surface opened, shares weighed by area. */
  readonly shareSummed: number
  readonly shareTouched: number
  readonly coresM3: number
  readonly organicKg: number
  readonly outDryT: number
  /** Greens without an organic-matter test: left out of what is taken out. */
  readonly untested: number
  readonly sand: readonly SandTotals[]
  readonly sandAll: BandT
  readonly loads: number
  readonly machineHours: readonly MachineHours[]
  readonly workMin: number
}

const sum = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((total, item) => total + of(item), 0)

const bandOf = (figures: readonly GreenFigures[]): BandT => ({
  lowT: sum(figures, (one) => one.sand.lowT),
  likelyT: sum(figures, (one) => one.sand.likelyT),
  highT: sum(figures, (one) => one.sand.highT),
})

const hoursByKind = (course: Course, figures: readonly GreenFigures[]): readonly MachineHours[] => {
  const minutes = new Map<MachineKind, number>()
  for (const { steps } of figures)
    for (const step of steps)
      if (step.machineKind !== null)
        minutes.set(step.machineKind, (minutes.get(step.machineKind) ?? 0) + step.minutes)
  const rows = [...minutes].map(([kind, total]) => {
    const machines = course.machines.filter((machine) => machine.kind === kind).length
    return { kind, machines, minutes: total, minutesEach: total / Math.max(1, machines) }
  })
  const longest = Math.max(0, ...rows.map((row) => row.minutesEach))
  return rows
    .map((row) => ({ ...row, bottleneck: row.minutesEach === longest }))
    .sort((a, b) => b.minutesEach - a.minutesEach)
}

/** Adds up the greens. `kindOfGroup` tells which sand each group takes. */
export const courseTotals = (
  course: Course,
  figures: readonly GreenFigures[],
  kindOfGroup: ReadonlyMap<string, SandStore['kind']>,
): CourseTotals => {
  const areaM2 = sum(figures, (one) => one.areaM2)
  const weighed = (of: (one: GreenFigures) => number): number =>
    areaM2 === 0 ? 0 : sum(figures, (one) => of(one) * one.areaM2) / areaM2
  const kinds = ['damp', 'kilnDried'] as const
  return {
    greens: figures.length,
    areaM2,
    shareSummed: weighed((one) => one.shareSummed),
    shareTouched: weighed((one) => one.shareTouched),
    coresM3: sum(figures, (one) => one.coresL) / 1000,
    organicKg: sum(figures, (one) => one.out?.organicKg ?? 0),
    outDryT: sum(figures, (one) => one.out?.dryT ?? 0),
    untested: figures.filter((one) => one.out === null).length,
    sand: kinds
      .map((kind) => {
        const of = figures.filter((one) => kindOfGroup.get(one.group) === kind && one.sand.highT > 0)
        return { kind, ...bandOf(of), loads: sum(of, (one) => one.sand.loads), greens: of.length }
      })
      .filter((row) => row.greens > 0),
    sandAll: bandOf(figures),
    loads: sum(figures, (one) => one.sand.loads),
    machineHours: hoursByKind(course, figures),
    workMin: sum(figures, (one) => one.workMin),
  }
}
