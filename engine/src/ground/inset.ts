import { Clipper, EndType, JoinType, type PathD } from 'clipper2-ts'
import { signedAreaM2, type Ring } from './polygon.ts'

/** Decimals of a metre kept by the clipping library's whole-number grid: 0.1 mm. */
export const CLIP_DECIMALS = 4

/** How far a rounded corner may stray from the true arc, m. */
const ARC_TOLERANCE_M = 0.005

/** Rings smaller than this are rounding crumbs, m2. */
const CRUMB_M2 = 1e-4

/** A ring as the clipping library takes it (a fresh copy, so the library can never change ours). */
export const pathOf = (ring: Ring): PathD => ring.map((point) => ({ x: point.x, y: point.y }))

/** Points that bend the edge by less than this are left out before it is moved, m: dense curves make the offset slow, and no machine follows them closer. */
const THIN_M = 0.002

/**
 * The edge moved inward by `byM`, 0 or more (islands grow by as much), as rings; empty when nothing is left. Outer rings come back
 * anticlockwise, islands clockwise. Within 2 mm of the true line.
 */
export const insetRings = (rings: readonly Ring[], byM: number): readonly Ring[] => {
  if (byM === 0) return rings
  // No circle in a shape is larger than the circle of its area. Spares the library the case where a curve shrinks to one point, which takes it minutes.
  const largest = Math.max(0, ...rings.map((ring) => Math.abs(signedAreaM2(ring))))
  if (byM > Math.sqrt(largest / Math.PI) - THIN_M) return []
  const thinned = Clipper.simplifyPathsD(rings.map(pathOf), THIN_M, true)
  const moved = Clipper.inflatePathsD(
    thinned,
    -byM,
    JoinType.Round,
    EndType.Polygon,
    2,
    CLIP_DECIMALS,
    ARC_TOLERANCE_M,
  )
  return moved.filter((ring) => ring.length >= 3 && Math.abs(signedAreaM2(ring)) > CRUMB_M2)
}
