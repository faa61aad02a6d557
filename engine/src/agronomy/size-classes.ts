/** A size class of sand and soil, mm. The USGA splits fine from very fine at 0.15 mm; some laboratories report 0.125 mm instead. */
export type SizeClass = { readonly name: string; readonly fromMm: number; readonly toMm: number }

/** Size classes of the USGA rootzone table (edition before 2018), coarse to fine. */
export const USGA_SIZE_CLASSES = {
  fineGravel: { name: 'fine gravel', fromMm: 2, toMm: 3.4 },
  veryCoarse: { name: 'very coarse sand', fromMm: 1, toMm: 2 },
  coarse: { name: 'coarse sand', fromMm: 0.5, toMm: 1 },
  medium: { name: 'medium sand', fromMm: 0.25, toMm: 0.5 },
  fine: { name: 'fine sand', fromMm: 0.15, toMm: 0.25 },
  veryFine: { name: 'very fine sand', fromMm: 0.05, toMm: 0.15 },
  silt: { name: 'silt', fromMm: 0.002, toMm: 0.05 },
  clay: { name: 'clay', fromMm: 0, toMm: 0.002 },
} as const satisfies Record<string, SizeClass>
