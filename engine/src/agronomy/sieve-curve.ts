import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { quantity } from '../catalogue/quantity.ts'
import { ok, type Result } from '../result.ts'

/** One sieve: its opening (mm) and the part of the sample that passes it (percent by mass). */
export type Sieve = { readonly sizeMm: number; readonly passingPercent: number }

/** Sieves from fine to coarse, each passing at least as much as the one before. Made by `curveOf` only. */
export type SieveCurve = readonly Sieve[]

/** A number, or the reason why there is none. */
export type Read = { readonly value: number } | { readonly value: null; readonly reason: string }

export const sievesSchema = v.pipe(
  v.array(
    v.strictObject({
      sizeMm: quantity({ meaning: 'Opening of the sieve', unit: 'mm', min: 0.0001, max: 200 }),
      passingPercent: quantity({ meaning: 'Part of the sample that passes', unit: '%', min: 0, max: 100 }),
    }),
  ),
  v.minLength(2),
  v.maxLength(60),
  v.description('Sieve analysis; the order of the sieves does not matter'),
)

/** Sorts sieves from fine to coarse. Errors: `notDefined` for one size twice, or a coarser sieve that passes less. */
export const curveOf = (sieves: readonly Sieve[], at = 'sieves'): Result<SieveCurve, CalculationError> => {
  const curve = sieves.toSorted((a, b) => a.sizeMm - b.sizeMm)
  for (const [i, sieve] of curve.entries()) {
    const finer = curve[i - 1]
    if (finer === undefined) continue
    if (finer.sizeMm === sieve.sizeMm)
      return notDefined(at, 'mm', `the sieve of ${sieve.sizeMm} mm is given twice`)
    if (finer.passingPercent > sieve.passingPercent)
      return notDefined(
        at,
        '%',
        `${sieve.passingPercent} % passes ${sieve.sizeMm} mm but ${finer.passingPercent} % passes the finer ${finer.sizeMm} mm; a coarser sieve passes at least as much`,
      )
  }
  return ok(curve)
}

const missing = (reason: string): Read => ({ value: null, reason })

/**
 * Size (mm) that `percent` of the sample is finer than, straight on the logarithm of the size between two sieves.
 * No number where the percentage lies outside what the sieves pass, or where they leave a whole range of sizes open.
 */
export const sizeAtMm = (curve: SieveCurve, percent: number): Read => {
  const finest = curve[0]
  const coarsest = curve.at(-1)
  if (finest === undefined || coarsest === undefined) return missing('there are no sieves')
  if (percent < finest.passingPercent)
    return missing(`already ${finest.passingPercent} % passes the finest sieve of ${finest.sizeMm} mm`)
  if (percent > coarsest.passingPercent)
    return missing(`only ${coarsest.passingPercent} % passes the coarsest sieve of ${coarsest.sizeMm} mm`)
  const above = curve.findIndex((sieve) => sieve.passingPercent >= percent)
  const upper = curve[above]
  const lower = curve[above - 1]
  if (upper === undefined) return missing('there are no sieves')
  if (lower === undefined || upper.passingPercent === percent) return { value: upper.sizeMm }
  const part = (percent - lower.passingPercent) / (upper.passingPercent - lower.passingPercent)
  return { value: lower.sizeMm * (upper.sizeMm / lower.sizeMm) ** part }
}

/** Percent of the sample finer than a size (mm), by the same lines; no number outside the sieves unless all or nothing passes there. */
export const passingAtPercent = (curve: SieveCurve, sizeMm: number): Read => {
  const finest = curve[0]
  const coarsest = curve.at(-1)
  if (finest === undefined || coarsest === undefined) return missing('there are no sieves')
  if (sizeMm < finest.sizeMm)
    return finest.passingPercent === 0
      ? { value: 0 }
      : missing(`${sizeMm} mm is finer than the finest sieve of ${finest.sizeMm} mm`)
  if (sizeMm > coarsest.sizeMm)
    return coarsest.passingPercent === 100
      ? { value: 100 }
      : missing(`${sizeMm} mm is coarser than the coarsest sieve of ${coarsest.sizeMm} mm`)
  const above = curve.findIndex((sieve) => sieve.sizeMm >= sizeMm)
  const upper = curve[above] ?? coarsest
  const lower = curve[above - 1]
  if (lower === undefined || upper.sizeMm === sizeMm) return { value: upper.passingPercent }
  const part = Math.log(sizeMm / lower.sizeMm) / Math.log(upper.sizeMm / lower.sizeMm)
  return { value: lower.passingPercent + part * (upper.passingPercent - lower.passingPercent) }
}

/** Percent of the sample between two sizes (mm). */
export const betweenPercent = (curve: SieveCurve, fromMm: number, toMm: number): Read => {
  const below = fromMm === 0 ? ({ value: 0 } as const) : passingAtPercent(curve, fromMm)
  const above = passingAtPercent(curve, toMm)
  if (below.value === null) return below
  if (above.value === null) return above
  return { value: above.value - below.value }
}

/** The D-values that gradings are judged by, mm. */
export const sieveReads = (curve: SieveCurve) => ({
  d10Mm: sizeAtMm(curve, 10),
  d15Mm: sizeAtMm(curve, 15),
  d30Mm: sizeAtMm(curve, 30),
  d50Mm: sizeAtMm(curve, 50),
  d60Mm: sizeAtMm(curve, 60),
  d85Mm: sizeAtMm(curve, 85),
  d90Mm: sizeAtMm(curve, 90),
})
