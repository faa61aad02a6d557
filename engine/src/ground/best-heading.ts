import { fail, ok, type Result } from '../result.ts'
import { bansBroken, type HeadingBan } from './heading-ban.ts'
import { halfTurnDeg } from './heading-frame.ts'
import { headingCandidatesDeg, leastExtentM } from './heading-candidates.ts'
import { passesAt, passGround, type PassGround, type Passes } from './passes.ts'
import type { PassSettings } from './pass-settings.ts'
import { polygonAreaM2, signedAreaM2, type Polygon } from './polygon.ts'
import { stripCount } from './strip-sheet.ts'
import { turnLengthM } from './turn-length.ts'

/** What the search looks for. */
export type HeadingWish = {
  readonly bans?: readonly HeadingBan[]
  /**
   * Passes to be worked one after the other, as angles from the first: [0] one pass, [0, 90] cuts both ways, [0, 12] a second pass
   * slightly turned. The sum of their times is made least, and none may break a ban.
   */
  readonly offsetsDeg?: readonly number[]
}

/** The heading found, the passes it gives, and how sure the search is. */
export type BestHeading = {
  /** First pass's heading, 0 to under 180 degrees. */
  readonly headingDeg: number
  /** One for each offset. */
  readonly passes: readonly Passes[]
  readonly timeMin: number
  /** No heading at all can be quicker than this (area over width, least number of runs); proven, but loose by the run ends. */
  readonly lowerBoundMin: number
}

/** Nothing is left to choose: each candidate breaks one of these bans. */
export type HeadingError = { readonly type: 'allHeadingsBanned'; readonly bans: readonly HeadingBan[] }

/** Candidates laid out in full besides, where the green falls into pieces and the ways between them matter. */
const LAID_OUT = 16

/** Valleys that are walked down; the better half of them to the bottom. */
const VALLEYS = 4

const FIRST_STEP_DEG = 2.5
const MIDDLE_STEP_DEG = 0.4

/** The refinement stops at this step, degrees: on a run of 60 m its end moves 5 cm. */
const FINEST_STEP_DEG = 0.05

/**
 * Largest shortfall of the search against a sweep in steps of a quarter of a degree, as a share of the time. Seen at most: 0.3 % on 120
 * rounded greens, 1.0 % on 120 jagged outlines that fall into pieces; on nine of ten none.
 */
export const HEADING_SEARCH_ERROR_SHARE = 0.015

type Score = { readonly headingDeg: number; readonly seconds: number }

/** What a heading costs, in seconds for all wished passes. Ways between pieces of the green are left to the last step. */
type Costs = {
  readonly isAllowed: (headingDeg: number) => boolean
  /** Not more than the true cost: area over width, and a turn for each strip. */
  readonly atLeast: (headingDeg: number) => number
  readonly exact: (headingDeg: number) => number
}

const costsOf = (
  ground: PassGround,
  settings: PassSettings,
  wish: Required<HeadingWish>,
  areaM2: number,
): Costs => {
  const { turnRadiusM, turnStyle, speedMPerS, widthM, overlapM } = settings
  const turnS = settings.turnS ?? turnLengthM(widthM - overlapM, turnRadiusM, turnStyle) / speedMPerS
  const sum = (cost: (headingDeg: number) => number) => (headingDeg: number) =>
    wish.offsetsDeg.reduce((seconds, offsetDeg) => seconds + cost(headingDeg + offsetDeg), 0)
  return {
    isAllowed: (headingDeg) =>
      wish.offsetsDeg.every((offsetDeg) => bansBroken(headingDeg + offsetDeg, wish.bans).length === 0),
    atLeast: sum((headingDeg) => areaM2 / widthM / speedMPerS + ground.strips.count(headingDeg) * turnS),
    exact: sum((headingDeg) => {
      const { runs, runLengthM } = ground.strips.totals(headingDeg)
      return runLengthM / speedMPerS + runs * turnS
    }),
  }
}

/** Candidates dearer than the best by more than this are no valley worth walking down. */
const WORTH_A_LOOK = 1.06

const byTime = (a: Score, b: Score): number => a.seconds - b.seconds || a.headingDeg - b.headingDeg

/** The cheapest candidates, cheapest first; those whose least possible cost is too high are never worked out. */
const cheapest = (candidates: readonly number[], costs: Costs): readonly Score[] => {
  const ranked = candidates
    .filter(costs.isAllowed)
    .map((headingDeg) => ({ headingDeg, seconds: costs.atLeast(headingDeg) }))
    .sort(byTime)
  const scored: Score[] = []
  let least = Infinity
  for (const { headingDeg, seconds } of ranked) {
    if (seconds > least * WORTH_A_LOOK) break
    const exact = costs.exact(headingDeg)
    least = Math.min(least, exact)
    scored.push({ headingDeg, seconds: exact })
  }
  return scored.sort(byTime)
}

/** Walks down from a place, halving the step each time, from `firstDeg` until it is under `lastDeg`. */
const walkedDown = (start: Score, firstDeg: number, lastDeg: number, costs: Costs): Score => {
  let best = start
  for (let step = firstDeg; step > lastDeg; step /= 2)
    for (const headingDeg of [best.headingDeg - step, best.headingDeg + step]) {
      if (!costs.isAllowed(headingDeg)) continue
      const seconds = costs.exact(headingDeg)
      if (seconds < best.seconds) best = { headingDeg, seconds }
    }
  return best
}

/** The bottoms of the cheapest valleys: several walked down some way, the best of them to the end. */
const bottomsOf = (scored: readonly Score[], costs: Costs): readonly Score[] =>
  scored
    .slice(0, VALLEYS)
    .map((start) => walkedDown(start, FIRST_STEP_DEG, MIDDLE_STEP_DEG, costs))
    .sort(byTime)
    .slice(0, VALLEYS / 2)
    .map((start) => walkedDown(start, MIDDLE_STEP_DEG, FINEST_STEP_DEG, costs))

/** Area of the straight runs' ground, m2. Islands inside it count off. */
const coverAreaM2 = ({ cover, laps }: PassGround, polygon: Polygon): number => {
  if (laps.length === 0) return polygonAreaM2(polygon)
  return cover.reduce((sum, ring) => sum + signedAreaM2(ring), 0)
}

/** `area / width` of straight runs and `fewest runs - 1` turns for one pass; laps as they are. */
const boundMin = (ground: PassGround, settings: PassSettings, areaM2: number): number => {
  const { cover } = ground
  const { widthM, overlapM } = settings
  const lapM = ground.laps.reduce((sum, lap) => sum + lap.lengthM, 0)
  const straight = cover.length === 0 ? 0 : stripCount(leastExtentM(cover), widthM, overlapM)
  const turns = Math.max(0, straight + ground.laps.length - 1)
  const seconds = (areaM2 / widthM + lapM) / settings.speedMPerS + turns * (settings.turnS ?? 0)
  return seconds / 60
}

type Option = { readonly headingDeg: number; readonly passes: readonly Passes[]; readonly timeMin: number }

/** The full passes of the valleys, cheapest first; the first without ways between pieces ends the search, since later ones cost more before such ways. */
const bestOption = (
  valleys: readonly Score[],
  lay: (headingDeg: number) => readonly Passes[],
): Option | undefined => {
  let best: Option | undefined
  for (const { headingDeg } of valleys) {
    const passes = lay(headingDeg)
    const timeMin = passes.reduce((sum, pass) => sum + pass.timeMin, 0)
    if (best === undefined || timeMin < best.timeMin) best = { headingDeg, passes, timeMin }
    if (passes.every((pass) => pass.transferM === 0)) break
  }
  return best
}

/**
 * The heading of least time over a checked outline. Candidates: the directions of the hull's long sides, the headings where the number of
 * runs changes, the limits of bans and every fifth degree; the best are then searched to a step of 0.05 degree, and the full pass,
 * with its ways between pieces, decides. The search may miss the true least by up to `HEADING_SEARCH_ERROR_SHARE`.
 */
export const bestHeading = (
  polygon: Polygon,
  settings: PassSettings,
  wish: HeadingWish = {},
): Result<BestHeading, HeadingError> => {
  const ground = passGround(polygon, settings)
  const { bans = [], offsetsDeg = [0] } = wish
  const areaM2 = coverAreaM2(ground, polygon)
  const costs = costsOf(ground, settings, { bans, offsetsDeg }, areaM2)
  const candidates = headingCandidatesDeg({ cover: ground.cover, ...settings }, bans, offsetsDeg)
  const scored = cheapest(candidates, costs)
  const bottoms = bottomsOf(scored, costs)
  const valleys = [...bottoms, ...scored.slice(0, LAID_OUT)].sort(byTime)
  const lay = (headingDeg: number) =>
    offsetsDeg.map((offsetDeg) => passesAt(ground, settings, headingDeg + offsetDeg))
  const best = bestOption(valleys, lay)
  if (best === undefined) return fail({ type: 'allHeadingsBanned', bans })
  const lowerBoundMin = offsetsDeg.length * boundMin(ground, settings, areaM2)
  return ok({ ...best, headingDeg: halfTurnDeg(best.headingDeg), lowerBoundMin })
}
