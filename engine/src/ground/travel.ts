import type { LocalPoint } from './plane.ts'
import { distanceM, eachEdge, isInsideRing, type Ring } from './polygon.ts'
import { linksByNode, lengthsFrom, type Link, type Links } from './shortest-path.ts'

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
  /** Surfaces that no machine crosses, not on a track either (the members' lawn, ground under repair). */
  readonly noGo: readonly Ring[]
  /** Surfaces crossed on a drawn track only, as by a bridge or a ride (water, wood). */
  readonly tracksOnly?: readonly Ring[]
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

/** Surfaces that bar open ground. */
const barsOf = (ground: TravelGround): readonly Ring[] => [...ground.noGo, ...(ground.tracksOnly ?? [])]

/** Track points first, then the places, then the corners of what bars open ground. */
type TravelGraph = {
  readonly points: readonly LocalPoint[]
  readonly links: Links
  /** Node of the first place. */
  readonly firstPlace: number
}

/**
 * One network for all places: the tracks, and free straight links, lengthened by the detour, from each place to places, track points and
 * corners, and from corners on. Between two track points only tracks count.
 */
const travelGraph = (places: readonly LocalPoint[], ground: TravelGround): TravelGraph => {
  const bars = barsOf(ground)
  const tracked = ground.points.length
  const points = [...ground.points, ...places, ...bars.flat()]
  const open: Link[] = []
  points.forEach((a, i) => {
    for (let j = Math.max(i + 1, tracked); j < points.length; j++) {
      const b = points[j]
      if (b === undefined || !isFree(a, b, bars)) continue
      const lengthM = distanceM(a, b) * ground.detourFactor
      open.push({ from: i, to: j, lengthM }, { from: j, to: i, lengthM })
    }
  })
  return { points, links: linksByNode(points.length, [...trackLinks(ground), ...open]), firstPlace: tracked }
}

/**
 * Ways between all places, m: the shortest over drawn tracks and open ground, where open ground costs the detour factor (1 to 5), goes round
 * what bars it, and may be taken to, from and between tracks. One-way tracks count one way. Row `from * places + to`; Infinity where no
 * way is free.
 */
export const waysBetween = (places: readonly LocalPoint[], ground: TravelGround): Float64Array => {
  const { links, firstPlace } = travelGraph(places, ground)
  const waysM = new Float64Array(places.length * places.length)
  places.forEach((_, from) => {
    const lengthM = lengthsFrom(links, firstPlace + from)
    waysM.set(lengthM.subarray(firstPlace, firstPlace + places.length), from * places.length)
  })
  return waysM
}
