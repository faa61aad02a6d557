import { fail, ok, type Result } from '../result.ts'
import type { LocalPoint } from './plane.ts'
import { distanceM, eachEdge, isInsideRing, type Ring } from './polygon.ts'
import { shortestPath, type Link } from './shortest-path.ts'

/** A drawn way between two track points. */
export type Track = {
  readonly from: number
  readonly to: number
  /** Only from `from` to `to`. Default both ways. */
  readonly isOneWay?: boolean
  /** True length, m, where the way winds; default straight. */
  readonly lengthM?: number
}

/** How machines get about the course. */
export type TravelGround = {
  /** Straight lines are lengthened by this off the tracks, 1 to 5. */
  readonly detourFactor: number
  /** Track points in the course's plane; empty where no tracks are drawn. */
  readonly points: readonly LocalPoint[]
  readonly tracks: readonly Track[]
  /** Surfaces that no machine crosses (ponds, beds, the member's lawn). */
  readonly noGo: readonly Ring[]
}

/** Ways over open ground wind about so much (our assumption; learned paces replace it). */
export const USUAL_DETOUR_FACTOR = 1.3

/** A way found. */
export type TravelWay = {
  readonly lengthM: number
  /** Whether it follows drawn tracks or goes straight over the ground. */
  readonly by: 'tracks' | 'straight'
  readonly line: readonly LocalPoint[]
}

/** No way is free. */
export type TravelError =
  | { readonly type: 'noWay' }
  | {
      readonly type: 'outOfRange'
      readonly field: 'detourFactor'
      readonly unit: '1'
      readonly min: 1
      readonly max: 5
      readonly received: number
    }

const turn = (o: LocalPoint, p: LocalPoint, q: LocalPoint): number =>
  (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x)

/** Nearer to its edge than this a point counts as on it, m. */
const ON_EDGE_M = 1e-6

const gapToEdgeM = (point: LocalPoint, ring: Ring): number => {
  let leastM = Infinity
  eachEdge(ring, (a, b) => {
    const lengthM = distanceM(a, b)
    const along = ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / (lengthM * lengthM)
    const share = Math.min(1, Math.max(0, along))
    leastM = Math.min(
      leastM,
      Math.hypot(a.x + share * (b.x - a.x) - point.x, a.y + share * (b.y - a.y) - point.y),
    )
  })
  return leastM
}

/** Whether a straight line runs through a surface: crosses an edge, or its middle lies within (a line along the edge does not). */
const crosses = (a: LocalPoint, b: LocalPoint, ring: Ring): boolean => {
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
  let hit = isInsideRing(middle, ring) && gapToEdgeM(middle, ring) > ON_EDGE_M
  eachEdge(ring, (p, q) => {
    if (turn(a, b, p) * turn(a, b, q) < 0 && turn(p, q, a) * turn(p, q, b) < 0) hit = true
  })
  return hit
}

const isFree = (a: LocalPoint, b: LocalPoint, noGo: readonly Ring[]): boolean =>
  !noGo.some((ring) => crosses(a, b, ring))

const trackLinks = (ground: TravelGround): readonly Link[] =>
  ground.tracks.flatMap((track) => {
    const a = ground.points[track.from]
    const b = ground.points[track.to]
    if (a === undefined || b === undefined || !isFree(a, b, ground.noGo)) return []
    const lengthM = track.lengthM ?? distanceM(a, b)
    const there = { from: track.from, to: track.to, lengthM }
    return track.isOneWay === true ? [there] : [there, { from: track.to, to: track.from, lengthM }]
  })

/** Free straight links between all given points, both ways, lengthened by the detour. */
const openLinks = (
  points: readonly LocalPoint[],
  ground: TravelGround,
  isWanted: (i: number, j: number) => boolean,
) =>
  points.flatMap((a, i) =>
    points.flatMap((b, j): Link[] =>
      i !== j && isWanted(i, j) && isFree(a, b, ground.noGo)
        ? [{ from: i, to: j, lengthM: distanceM(a, b) * ground.detourFactor }]
        : [],
    ),
  )

/** Over open ground: straight, or round the corners of what is no-go. */
const overGround = (from: LocalPoint, to: LocalPoint, ground: TravelGround): TravelWay | undefined => {
  const points = [from, to, ...ground.noGo.flat()]
  const found = shortestPath(
    points.length,
    openLinks(points, ground, () => true),
    0,
    1,
  )
  return found === undefined
    ? undefined
    : { lengthM: found.lengthM, by: 'straight', line: found.nodes.flatMap((k) => points[k] ?? []) }
}

/** By the tracks: on and off them over free ground. */
const byTracks = (from: LocalPoint, to: LocalPoint, ground: TravelGround): TravelWay | undefined => {
  const points = [...ground.points, from, to]
  const start = ground.points.length
  const onOff = openLinks(
    points,
    ground,
    (i, j) => (i === start && j < start) || (j === start + 1 && i < start),
  )
  const found = shortestPath(points.length, [...trackLinks(ground), ...onOff], start, start + 1)
  return found === undefined
    ? undefined
    : { lengthM: found.lengthM, by: 'tracks', line: found.nodes.flatMap((k) => points[k] ?? []) }
}

/**
 * The way from one place to another, m. With tracks drawn: the shortest over them, on and off over free ground times the detour factor, or
 * wholly over the ground where that is shorter. Without: straight times the detour factor, round no-go surfaces. One-way tracks count one way.
 */
export const travelWay = (
  from: LocalPoint,
  to: LocalPoint,
  ground: TravelGround,
): Result<TravelWay, TravelError> => {
  const { detourFactor } = ground
  if (!(detourFactor >= 1 && detourFactor <= 5))
    return fail({
      type: 'outOfRange',
      field: 'detourFactor',
      unit: '1',
      min: 1,
      max: 5,
      received: detourFactor,
    })
  if (from.x === to.x && from.y === to.y) return ok({ lengthM: 0, by: 'straight', line: [from, to] })
  const straight = overGround(from, to, ground)
  const tracks = ground.tracks.length === 0 ? undefined : byTracks(from, to, ground)
  if (straight === undefined) return tracks === undefined ? fail({ type: 'noWay' }) : ok(tracks)
  return ok(tracks !== undefined && tracks.lengthM < straight.lengthM ? tracks : straight)
}

/** Minutes for a way: machines go slower loaded. Speeds in m/s, above 0. */
export const travelMin = (
  way: TravelWay,
  speeds: { readonly emptyMPerS: number; readonly loadedMPerS: number },
  load: 'empty' | 'loaded',
): number => way.lengthM / (load === 'loaded' ? speeds.loadedMPerS : speeds.emptyMPerS) / 60
