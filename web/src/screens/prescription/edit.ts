import type { Operation, Prescription, PrescriptionGroup } from '@swardwright/engine'

/** One step of a chain. */
export type Step = PrescriptionGroup['chain'][number]

/** The prescription with one group changed. */
export const withGroup = (
  prescription: Prescription,
  id: string,
  change: (group: PrescriptionGroup) => PrescriptionGroup,
): Prescription => ({
  ...prescription,
  groups: prescription.groups.map((group) => (group.id === id ? change(group) : group)),
})

/** The group with one step changed. */
export const withStep = (
  group: PrescriptionGroup,
  at: number,
  change: (step: Step) => Step,
): PrescriptionGroup => ({
  ...group,
  chain: group.chain.map((step, index) => (index === at ? change(step) : step)),
})

/** The group with one step taken out; the last step stays, since a chain is never empty. */
export const withoutStep = (group: PrescriptionGroup, at: number): PrescriptionGroup =>
  group.chain.length === 1 ? group : { ...group, chain: group.chain.toSpliced(at, 1) }

/** The group with a step moved up (-1) or down (+1); at the ends it stays. */
export const withMoved = (group: PrescriptionGroup, at: number, by: -1 | 1): PrescriptionGroup => {
  const step = group.chain[at]
  const to = at + by
  if (step === undefined || to < 0 || to >= group.chain.length) return group
  return { ...group, chain: group.chain.toSpliced(at, 1).toSpliced(to, 0, step) }
}

/** Where tines start when a step with tines is added. Common practice, no source. */
const START_TINES = {
  holeDiameterMm: 12,
  coreDiameterMm: 9,
  acrossMm: 50,
  alongMm: 50,
  depthMm: 60,
  setLifeGreens: 12,
} as const

/** Where blades start when a scarifying step is added. Common practice, no source. */
const START_BLADES = { bladeWidthMm: 2, bladeSpacingMm: 40, depthMm: 8 } as const

const start = (operation: Operation): Step => {
  const step: Step = { operation, passes: 1, effects: [] }
  if (operation === 'core') return { ...step, tines: START_TINES }
  if (operation === 'solidTine') return { ...step, tines: { ...START_TINES, coreDiameterMm: 0 } }
  if (operation === 'scarify') return { ...step, blades: START_BLADES }
  if (operation === 'dragIn') return { ...step, drySand: true }
  return step
}

/** The group with a new step at the end. */
export const withAdded = (group: PrescriptionGroup, operation: Operation): PrescriptionGroup => ({
  ...group,
  chain: [...group.chain, start(operation)],
})

/** The group that takes a green: the first that names it, else the one for all; null where there is none. */
export const groupTaking = (prescription: Prescription, green: string): PrescriptionGroup | null =>
  prescription.groups.find((one) => one.greens !== 'all' && one.greens.includes(green)) ??
  prescription.groups.find((one) => one.greens === 'all') ??
  null

/** The greens that a group works: named by it, or left over by the groups that name theirs. */
export const greensOf = (
  prescription: Prescription,
  group: PrescriptionGroup,
  greens: readonly string[],
): readonly string[] => greens.filter((green) => groupTaking(prescription, green)?.id === group.id)
