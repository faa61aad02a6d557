import { crossesRing } from './no-go.ts'
import type { Run } from './passes.ts'
import type { LocalPoint } from './plane.ts'
import { distanceM, eachEdge, isInsideRing, type Ring } from './polygon.ts'

/** The ground that a machine's width sweeps beyond one end of a straight run, as long as `roomM`. */
const groundBeyond = (run: readonly [LocalPoint, LocalPoint], widthM: number, roomM: number): Ring => {
  const [from, to] = run
  const lengthM = distanceM(from, to)
  const [ux, uy] = [(to.x - from.x) / lengthM, (to.y - from.y) / lengthM]
  const corner = (side: number, aheadM: number): LocalPoint => ({
    x: to.x - side * uy + aheadM * ux,
    y: to.y + side * ux + aheadM * uy,
  })
  const half = widthM / 2
  return [corner(half, 0), corner(-half, 0), corner(-half, roomM), corner(half, roomM)]
}

/** Whether two surfaces share ground. */
const meet = (a: Ring, b: Ring): boolean => {
  let hit = a.some((point) => isInsideRing(point, b)) || b.some((point) => isInsideRing(point, a))
  eachEdge(a, (p, q) => {
    hit ||= crossesRing(p, q, b)
  })
  return hit
}

/**
 * The runs, as places in the list, that leave the green towards an obstacle: at either end some of the machine's width meets it within
 * `roomM`, the ground needed to come to a halt or to turn. Laps are left out.
 */
export const runsTowards = (
  runs: readonly Run[],
  obstacle: Ring,
  machine: { readonly widthM: number; readonly roomM: number },
): readonly number[] => {
  const { widthM, roomM } = machine
  const meets = (from: LocalPoint, to: LocalPoint): boolean =>
    meet(groundBeyond([from, to], widthM, roomM), obstacle)
  return runs.flatMap((run, index) =>
    run.kind === 'straight' && (meets(run.from, run.to) || meets(run.to, run.from)) ? [index] : [],
  )
}
