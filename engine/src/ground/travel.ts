import { crossesRing } from './no-go.ts'
import type { LocalPoint } from './plane.ts'
import { distanceM, type Ring } from './polygon.ts'
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

const isFree = (a: LocalPoint, b: LocalPoint, noGo: readonly Ring[]): boolean =>
  !noGo.some((ring) => crossesRing(a, b, ring))

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
