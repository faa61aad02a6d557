import { dayNumber } from '../time/calendar.ts'
import { fail, ok, type Result } from '../result.ts'
import { bottomMm, brokenLayers, type Layer } from './layers.ts'

/**
 * One result of a laboratory: organic matter by depth, and the facts of its method. Apart from the profile state (`profile-state.ts`):
 * this is what was measured on a day, never changed afterwards.
 */
export type LaboratoryResult = {
  /** Day of sampling, yyyy-mm-dd. */
  readonly date: string
  readonly laboratory?: string | undefined
  /** Temperature of the furnace, degrees C (ASTM F1647: 360; others 400 or 440). */
  readonly burnC?: number | undefined
  /** Whether the living grass was left in the sample. */
  readonly verdure?: 'in' | 'out' | undefined
  /** Layers from the surface down, percent of dry mass; the last ends at the sampling depth. */
  readonly layers: readonly Layer[]
}

/** A part of the method in which two results differ, or which one of them does not state. */
export type MethodDifference = {
  readonly what: 'burnC' | 'verdure' | 'layers'
  readonly earlier: string
  readonly later: string
}

/** Why two results are not compared. */
export type ComparisonError =
  | { readonly type: 'differentMethod'; readonly differences: readonly MethodDifference[] }
  | { readonly type: 'badLayers'; readonly which: 'earlier' | 'later'; readonly reason: string }
  | { readonly type: 'datesOutOfOrder'; readonly earlier: string; readonly later: string }

/** Change of one layer between two results, points of percent. */
export type LayerChange = {
  readonly fromMm: number
  readonly toMm: number
  readonly earlierPercent: number
  readonly laterPercent: number
  readonly changePoints: number
}

/** Two results of one method side by side. */
export type Comparison = {
  readonly days: number
  readonly layers: readonly LayerChange[]
  /** The method is the same but not the house; small shifts between houses are then possible. */
  readonly anotherLaboratory: boolean
}

/** Depth that a result was sampled to, mm. */
export const samplingDepthMm = (result: LaboratoryResult): number => bottomMm(result.layers)

const bounds = (layers: readonly Layer[]): string =>
  layers.map((l) => `${l.fromMm}-${l.toMm}`).join(', ') + ' mm'

/** What each part of the method is, in words; undefined where the result does not state it. */
const methodOf = (r: LaboratoryResult): Readonly<Record<MethodDifference['what'], string | undefined>> => ({
  burnC: r.burnC === undefined ? undefined : `${r.burnC} C`,
  verdure: r.verdure,
  layers: bounds(r.layers),
})

/** How the methods of two results differ; what one of them leaves unsaid counts as different. */
export const methodDifferences = (
  earlier: LaboratoryResult,
  later: LaboratoryResult,
): readonly MethodDifference[] => {
  const [a, b] = [methodOf(earlier), methodOf(later)]
  const parts: readonly MethodDifference['what'][] = ['burnC', 'verdure', 'layers']
  return parts
    .filter((what) => a[what] === undefined || a[what] !== b[what])
    .map((what) => ({ what, earlier: a[what] ?? 'not stated', later: b[what] ?? 'not stated' }))
}

/**
 * Sets two results of one green side by side. Refuses when burn temperature, verdure or layers differ or are not stated: a laboratory
 * that burns at 440 C or leaves the grass in gives higher numbers from the same green (USGA Green Section Record 62(02)).
 */
export const compareResults = (
  earlier: LaboratoryResult,
  later: LaboratoryResult,
): Result<Comparison, ComparisonError> => {
  for (const [which, result] of [
    ['earlier', earlier],
    ['later', later],
  ] as const) {
    const broken = brokenLayers(result.layers)
    if (!broken.ok)
      return fail({
        type: 'badLayers',
        which,
        reason: 'reason' in broken.error ? broken.error.reason : broken.error.type,
      })
  }
  const differences = methodDifferences(earlier, later)
  if (differences.length > 0) return fail({ type: 'differentMethod', differences })
  const days = dayNumber(later.date) - dayNumber(earlier.date)
  if (!(days > 0)) return fail({ type: 'datesOutOfOrder', earlier: earlier.date, later: later.date })
  return ok({
    days,
    anotherLaboratory: earlier.laboratory !== later.laboratory,
    layers: earlier.layers.map((layer, i) => {
      const laterPercent = later.layers[i]?.organicPercent ?? layer.organicPercent
      return {
        fromMm: layer.fromMm,
        toMm: layer.toMm,
        earlierPercent: layer.organicPercent,
        laterPercent,
        changePoints: laterPercent - layer.organicPercent,
      }
    }),
  })
}
