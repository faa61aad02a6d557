import type { UnitsWanted } from '@swardwright/engine'

/** A band of the profile as measured or modelled. */
export type SectionLayer = {
  readonly fromMm: number
  readonly toMm: number
  /** Organic matter by loss on ignition, %. */
  readonly organicPercent: number
  /** Organic mass of the band, kg/m2, where it is known. */
  readonly organicKgPerM2?: number | undefined
}

/** Tines as they cut this section. */
export type SectionTines = {
  /** Outside diameter: the hole. */
  readonly holeDiameterMm: number
  /** Inside diameter: the core; 0 for solid tines. */
  readonly coreDiameterMm: number
  readonly acrossMm: number
  readonly depthMm: number
}

/** Scarifier blades as they cut this section. */
export type SectionBlades = {
  readonly bladeWidthMm: number
  readonly bladeSpacingMm: number
  readonly depthMm: number
  readonly passes: number
}

/** The sand that goes on. */
export type SectionSand = {
  /** Sand left lying on the surface. */
  readonly surfaceMm: number
  /** Share of the room in holes and grooves that sand fills, 0 to 1. */
  readonly filledShare: number
}

/** The green as it is, opened, and finished. */
export const SECTION_STATES = ['before', 'opened', 'after'] as const

/** Which of them is drawn. */
export type SectionState = (typeof SECTION_STATES)[number]

/** All that the section drawing shows. Lengths in mm, drawn to one scale across and down. */
export type SectionInput = {
  /** From the top down, not overlapping. What no layer covers is drawn as not measured. */
  readonly layers: readonly SectionLayer[]
  /** Thickness of the thatch band, where it was measured. */
  readonly thatchMm?: number | undefined
  readonly tines?: readonly SectionTines[]
  readonly blades?: readonly SectionBlades[]
  readonly sand?: SectionSand | undefined
  readonly state: SectionState
  /** Width of the cut, 20 to 600 mm; 100 if not given. */
  readonly widthMm?: number
  /** Depth of the cut, 20 to 400 mm; 100 if not given. */
  readonly depthMm?: number
  readonly pxPerMm: number
  readonly units: UnitsWanted
  /** Short word for the ids inside the drawing; different for each drawing of a page. */
  readonly scope: string
  /** Whether figures stand in the margin; two sections side by side need them once. */
  readonly margin?: 'figures' | 'none'
}

/** Where things lie on the sheet, px. */
export type SectionPlan = {
  readonly pxPerMm: number
  readonly widthMm: number
  readonly depthMm: number
  /** Left edge of the soil. */
  readonly leftPx: number
  /** The ground line: 0 mm. */
  readonly groundPx: number
  readonly xPx: (mm: number) => number
  readonly yPx: (mm: number) => number
}

/** Width of the ruler at the left, px. */
export const RULER_PX = 34
/** Room above the ground line for leaf and measures, px. */
export const ABOVE_PX = 44

/** The layout of a section. */
export const sectionPlan = (input: SectionInput): SectionPlan => {
  const { pxPerMm, widthMm = 100, depthMm = 100 } = input
  return {
    pxPerMm,
    widthMm,
    depthMm,
    leftPx: RULER_PX,
    groundPx: ABOVE_PX,
    xPx: (mm) => RULER_PX + mm * pxPerMm,
    yPx: (mm) => ABOVE_PX + mm * pxPerMm,
  }
}

/**
 * Where cuts that lie `spacingMm` apart meet a section `widthMm` wide. The first lies at half a spacing, so that a section as wide as
 * n spacings always shows n. Of several settings or passes (`set` of `sets`, from 0) each takes its own share of the spacing.
 */
export const cutsAcross = (spacingMm: number, widthMm: number, set = 0, sets = 1): readonly number[] => {
  const firstMm = (spacingMm * (set + 0.5)) / sets
  const count = Math.max(0, Math.ceil((widthMm - firstMm) / spacingMm))
  return Array.from({ length: count }, (_, n) => firstMm + n * spacingMm)
}
