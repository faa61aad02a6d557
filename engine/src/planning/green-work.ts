import type { CalculationError } from '../catalogue/errors.ts'
import type { Course, Green, Machine } from '../course/course.ts'
import { ok, type Result } from '../result.ts'
import type { Shape } from '../ground/ellipse.ts'
import { greenShape } from './green-shape.ts'
import { OPERATIONS_BY_MACHINE_KIND, type Operation } from './operations.ts'
import type { ChainStep, Prescription, PrescriptionGroup } from './prescription.ts'
import type { ProblemStep } from './problem.ts'
import { openedBy, sandForGreen, type Opened, type SandForGreen } from './sand-for-green.ts'
import { tineUse } from './tine-sets.ts'
import { stepMinutes, type PassTimer } from './step-minutes.ts'

/** Everything a prescription means for one green. */
export type GreenWork = {
  readonly green: Green
  readonly group: PrescriptionGroup
  readonly opened: Opened
  readonly sand: SandForGreen
  readonly steps: readonly ProblemStep[]
}

/** The group that a green belongs to: the first that names it, else the one for all. */
export const groupOf = (prescription: Prescription, green: string): PrescriptionGroup | undefined =>
  prescription.groups.find((group) => group.greens !== 'all' && group.greens.includes(green)) ??
  prescription.groups.find((group) => group.greens === 'all')

/** Whether a machine can do an operation. */
export const canDo = (machine: Machine, operation: Operation): boolean =>
  (OPERATIONS_BY_MACHINE_KIND[machine.kind] as readonly Operation[]).includes(operation)

/** The machines of a course that can do an operation, in the course's order. */
export const machinesFor = (course: Course, operation: Operation): readonly Machine[] =>
  course.machines.filter((machine) => canDo(machine, operation))

/** The smallest hopper among the dressers: loads are cut to it, so that any dresser can take any load. Dressers without a stated hopper carry one load. */
const hopperTOf = (course: Course): number =>
  machinesFor(course, 'dress').reduce(
    (least, machine) => Math.min(least, machine.hopperT ?? Infinity),
    Infinity,
  )

/** Times a green's coverings; answers are kept, since passes of one operation repeat. */
const timing = (shape: Shape, timer: PassTimer | undefined) => {
  const known = new Map<string, number>()
  return (machine: Machine, step: ChainStep, loads: number): number => {
    const key = `${machine.id} ${step.operation} ${step.tines?.alongMm ?? ''} ${loads}`
    const before = known.get(key)
    if (before !== undefined) return before
    const minutes = stepMinutes(shape, machine, step, loads, timer)
    known.set(key, minutes)
    return minutes
  }
}

/** Numbers the coverings of each operation through the chain, and cuts a dressing into loads. */
const stepsOf = (
  course: Course,
  work: Omit<GreenWork, 'steps'>,
  dryNeedMm: number,
  timer?: PassTimer,
): readonly ProblemStep[] => {
  const minutes = timing(greenShape(work.green), timer)
  const passByOperation = new Map<Operation, number>()
  const dressPasses = work.group.chain.reduce(
    (sum, step) => sum + (step.operation === 'dress' ? step.passes : 0),
    0,
  )
  let load = 0
  return work.group.chain.flatMap((step) =>
    Array.from({ length: step.passes }, (_, covering): readonly ProblemStep[] => {
      const pass = (passByOperation.get(step.operation) ?? 0) + 1
      passByOperation.set(step.operation, pass)
      const isFirst = covering === 0
      const isLast = covering === step.passes - 1
      const dressing = step.operation === 'dress'
      const tines = tineUse(course, work.green, step)
      const loads = dressing ? Math.ceil(work.sand.loads / dressPasses) : 1
      return Array.from({ length: loads }, (_, part): ProblemStep => {
        if (dressing) load++
        return {
          operation: step.operation,
          pass,
          load: dressing ? load : null,
          minutesByMachine: new Map(
            machinesFor(course, step.operation).map((machine) => [machine.id, minutes(machine, step, loads)]),
          ),
          // Opening holds from the first covering; the other states are reached with the last.
          effects: step.effects.filter((effect) =>
            effect === 'opens' ? isFirst && part === 0 : isLast && part === loads - 1,
          ),
          sandT: dressing ? work.sand.bandT.likely / (loads * dressPasses) : 0,
          lagMin: isFirst && part === 0 ? (step.waitMin ?? 0) : 0,
          nextDay: isFirst && part === 0 && step.nextDay === true,
          dryNeedMm: isFirst && step.drySand === true ? dryNeedMm : 0,
          ...(tines === undefined ? {} : { tines }),
        }
      })
    }).flat(),
  )
}

/** Water that must leave a green's sand before it can be dragged in, mm. */
export type DryNeed = (sand: PrescriptionGroup['sand'], lyingMm: number) => number

/** Works out what the prescription means for a green: what it opens, the sand, the steps with their minutes. */
export const greenWork = (
  course: Course,
  green: Green,
  group: PrescriptionGroup,
  dryNeed: DryNeed,
  timer?: PassTimer,
): Result<GreenWork, CalculationError> => {
  const opened = openedBy(group)
  if (!opened.ok) return opened
  const hopperT = hopperTOf(course)
  const sand = sandForGreen(group, green.areaM2, hopperT)
  if (!sand.ok) return sand
  const work = { green, group, opened: opened.value, sand: sand.value }
  return ok({ ...work, steps: stepsOf(course, work, dryNeed(group.sand, sand.value.likelyMm), timer) })
}
