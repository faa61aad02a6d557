/**
 * How the machine comes round at the end of a run.
 * - `lift`: lifted on the surround; it may back up, so a tight turn is an arc, a reverse and an arc.
 * - `keyhole`: always forward; a tight turn swings out first and comes back in a loop.
 */
export type TurnStyle = 'lift' | 'keyhole'

/**
 * Length of the half turn from one run into another `sideM` beside it, m.
 *
 * With room (`side >= 2 r`): two quarter arcs and a straight, `L = pi r + (side - 2 r)`.
 * Tight, lift: two quarter arcs with a reverse between, `L = pi r + (2 r - side)`.
 * Tight, keyhole: three arcs left-right-left, `L = r (pi + 4 acos((side + 2 r) / (4 r)))`, the shortest forward curve of that kind
 * (Dubins 1957, curves of type LRL; worked out from the three touching circles).
 * `radiusM` 0 is a machine that turns on the spot: `L = side`.
 */
export const turnLengthM = (sideM: number, radiusM: number, style: TurnStyle): number => {
  const roomM = sideM - 2 * radiusM
  if (roomM >= 0) return Math.PI * radiusM + roomM
  if (style === 'lift') return Math.PI * radiusM - roomM
  return radiusM * (Math.PI + 4 * Math.acos((sideM + 2 * radiusM) / (4 * radiusM)))
}
