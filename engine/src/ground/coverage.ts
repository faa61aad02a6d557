import { Clipper, ClipType, FillRule, type PathD, type PathsD } from 'clipper2-ts'
import { CLIP_DECIMALS, insetRings, pathOf } from './inset.ts'
import type { Passes, Run } from './passes.ts'
import type { PassSettings } from './pass-settings.ts'
import { plainSweepTwiceM2 } from './plain-sweep.ts'
import { polygonAreaM2, ringsOf, type Polygon } from './polygon.ts'

/** What one pass leaves on the green, m2. */
export type Coverage = {
  /** Worked at least once. */
  readonly coveredM2: number
  /** Of that, worked twice or more. */
  readonly coveredTwiceM2: number
  /** Not worked: corners beside islands. */
  readonly missedM2: number
}

const swathOf = (run: Run, widthM: number): PathD => {
  const half = widthM / 2 / run.lengthM
  const x = (run.to.y - run.from.y) * half
  const y = (run.from.x - run.to.x) * half
  return [
    { x: run.from.x - x, y: run.from.y - y },
    { x: run.from.x + x, y: run.from.y + y },
    { x: run.to.x + x, y: run.to.y + y },
    { x: run.to.x - x, y: run.to.y - y },
  ]
}

/** The band of each lap: the green further in than the lap's outer side, less what lies further in than its inner side. */
const lapBands = (polygon: Polygon, settings: PassSettings): PathsD => {
  const rings = ringsOf(polygon)
  const stepM = settings.widthM - settings.overlapM
  return Array.from({ length: settings.laps }, (_, lap) => [
    ...insetRings(rings, lap * stepM).map(pathOf),
    ...insetRings(rings, lap * stepM + settings.widthM).map((ring) => pathOf(ring).reverse()),
  ]).flat()
}

/** A box round everything, run clockwise: it takes one from every count of cover, so that only what is covered twice stays above nought. */
const oneLess = (paths: PathsD): PathD => {
  const bounds = Clipper.getBoundsPathsD(paths)
  const { left, right, top, bottom } = bounds
  return [
    { x: left - 1, y: top - 1 },
    { x: left - 1, y: bottom + 1 },
    { x: right + 1, y: bottom + 1 },
    { x: right + 1, y: top - 1 },
  ]
}

const areaOnGreenM2 = (paths: PathsD, green: PathsD): number => {
  const cut = Clipper.booleanOpD(ClipType.Intersection, paths, green, FillRule.Positive, CLIP_DECIMALS)
  return Math.abs(Clipper.areaPathsD(cut))
}

/**
 * Areas covered, covered twice and missed, by polygon clipping on a 0.1 mm grid. A lap counts as the full band between its two sides, so a
 * sharp outward corner that a machine in truth rounds off counts as worked.
 */
export const clippedCoverage = (polygon: Polygon, settings: PassSettings, passes: Passes): Coverage => {
  const green = ringsOf(polygon).map(pathOf)
  const straight = passes.runs.filter((run) => run.kind === 'straight')
  const swaths = [...lapBands(polygon, settings), ...straight.map((run) => swathOf(run, settings.widthM))]
  if (swaths.length === 0) return { coveredM2: 0, coveredTwiceM2: 0, missedM2: polygonAreaM2(polygon) }
  const coveredM2 = areaOnGreenM2(swaths, green)
  const coveredTwiceM2 = areaOnGreenM2([oneLess([...swaths, ...green]), ...swaths], green)
  return { coveredM2, coveredTwiceM2, missedM2: Math.max(0, polygonAreaM2(polygon) - coveredM2) }
}

/** Areas covered, covered twice and missed: summed along the strips where the runs plainly reach all of a green, clipped elsewhere. */
export const coverageOf = (polygon: Polygon, settings: PassSettings, passes: Passes): Coverage => {
  const coveredTwiceM2 = plainSweepTwiceM2(polygon, settings, passes)
  return coveredTwiceM2 === undefined
    ? clippedCoverage(polygon, settings, passes)
    : { coveredM2: polygonAreaM2(polygon), coveredTwiceM2, missedM2: 0 }
}
