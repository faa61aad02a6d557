import type {
  BladeSetting,
  Operation,
  PrescriptionGroup,
  SandSetting,
  TineSetting,
  UnitsWanted,
} from '@swardwright/engine'
import { bothUnits, figureOf, quantityWords } from '../units.ts'
import { TASK_WORDS } from '../operation-words.ts'

/** Tines as they are set: 'hole 13 mm (0.51 in), core 10 mm (0.39 in), every 50 x 50 mm, 75 mm (2.95 in) deep'. */
export const tineWords = (tines: TineSetting, units: UnitsWanted): string => {
  const tine = (mm: number): string => bothUnits('tine', mm, units)
  const hole =
    tines.coreDiameterMm > 0
      ? `hole ${tine(tines.holeDiameterMm)}, core ${tine(tines.coreDiameterMm)}`
      : `solid ${tine(tines.holeDiameterMm)}`
  const every = `every ${figureOf('tine', tines.acrossMm, units)} \u00d7 ${quantityWords('tine', tines.alongMm, units)}`
  return `${hole}, ${every}, ${bothUnits('depth', tines.depthMm, units)} deep`
}

/** Blades as they are set: 'blades 2 mm (0.08 in), every 40 mm (1.57 in), 8 mm (0.31 in) deep'. */
export const bladeWords = (blades: BladeSetting, units: UnitsWanted): string =>
  `blades ${bothUnits('tine', blades.bladeWidthMm, units)}, every ${bothUnits('tine', blades.bladeSpacingMm, units)}, ${bothUnits('depth', blades.depthMm, units)} deep`

/** Sand as it goes on: 'damp sand, 1 mm (0.04 in) on the surface'. The layer is read as the tines are: half a millimetre counts. */
export const sandWords = (sand: SandSetting, units: UnitsWanted): string =>
  `${sand.kind === 'damp' ? 'damp' : 'kiln-dried'} sand, ${bothUnits('tine', sand.surfaceMm, units)} on the surface`

const SAND_WORK: readonly string[] = ['dress', 'dragIn', 'load']

/** The settings that a person needs for this group of greens, one line a step that the person does. */
export const settingLines = (
  group: PrescriptionGroup,
  operations: ReadonlySet<string>,
  units: UnitsWanted,
): readonly string[] => {
  const line = (operation: Operation, words: string): string => `${TASK_WORDS[operation].work}: ${words}`
  return [
    ...group.chain
      .filter((step) => operations.has(step.operation))
      .flatMap((step) => [
        ...(step.tines === undefined ? [] : [line(step.operation, tineWords(step.tines, units))]),
        ...(step.blades === undefined ? [] : [line(step.operation, bladeWords(step.blades, units))]),
      ]),
    ...(SAND_WORK.some((operation) => operations.has(operation))
      ? [line('dress', sandWords(group.sand, units))]
      : []),
  ]
}
