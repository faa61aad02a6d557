import type { Green, PrescriptionGroup, UnitsWanted } from '@swardwright/engine'
import type { SectionInput, SectionState } from '@swardwright/present'
import { blades, latestTest, tineSteps } from '../../compute/from-catalogue.ts'

const LEAST_DEPTH_MM = 100
const BELOW_DEEPEST_MM = 15

/** What the section of a green shows: its latest test, and what the group opens and fills. */
export const sectionOf = (
  green: Green,
  group: PrescriptionGroup | null,
  state: SectionState,
  how: { readonly pxPerMm: number; readonly units: UnitsWanted; readonly margin: 'figures' | 'none' },
): SectionInput => {
  const tines = group === null ? [] : tineSteps(group).map((step) => step.tines)
  const cut = group === null ? null : blades(group)
  const deepestMm = Math.max(0, ...tines.map((one) => one.depthMm))
  return {
    layers: latestTest(green)?.layers ?? [],
    state,
    tines,
    blades: cut === null ? [] : [{ ...cut.blades, passes: cut.passes }],
    sand:
      group === null
        ? undefined
        : { surfaceMm: group.sand.surfaceMm, filledShare: Math.min(1, group.sand.fillFactor) },
    depthMm: Math.max(LEAST_DEPTH_MM, Math.ceil((deepestMm + BELOW_DEEPEST_MM) / 10) * 10),
    scope: `${green.id}-${state}`,
    ...how,
  }
}
