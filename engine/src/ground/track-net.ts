import type { LocalPoint } from './plane.ts'
import { distanceM } from './polygon.ts'
import type { Track } from './travel.ts'

/** A track as somebody drew it, in local metres. */
export type TrackLine = {
  readonly line: readonly LocalPoint[]
  /** Driven only in the direction drawn. */
  readonly isOneWay: boolean
}

/** Tracks as points and the stretches between them. */
export type TrackNet = { readonly points: readonly LocalPoint[]; readonly tracks: readonly Track[] }

/** Two points nearer than this are one, m. */
const SAME_M = 0.1

/** The end of a track that lies this near to another track joins it, m: nobody draws closer on a screen (our assumption). */
const JOIN_M = 8

/** The nearest point of a stretch, and how far along it lies (0 to 1). */
type Foot = { readonly share: number; readonly point: LocalPoint; readonly gapM: number }

const footOn = (point: LocalPoint, a: LocalPoint, b: LocalPoint): Foot => {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const squared = dx * dx + dy * dy
  const along = squared === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / squared
  const share = Math.min(1, Math.max(0, along))
  const foot = { x: a.x + share * dx, y: a.y + share * dy }
  return { share, point: foot, gapM: distanceM(point, foot) }
}

/** Where two stretches cross, as a share of the first; undefined when they do not, or run alike. */
const crossingShare = (a: LocalPoint, b: LocalPoint, c: LocalPoint, d: LocalPoint): number | undefined => {
  const area = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)
  if (area === 0) return undefined
  const share = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / area
  const other = ((c.x - a.x) * (b.y - a.y) - (c.y - a.y) * (b.x - a.x)) / area
  return share >= 0 && share <= 1 && other >= 0 && other <= 1 ? share : undefined
}

type Stretch = { readonly line: number; readonly a: LocalPoint; readonly b: LocalPoint }

const stretchesOf = (lines: readonly TrackLine[]): readonly Stretch[] =>
  lines.flatMap(({ line }, index) =>
    line.flatMap((a, k): Stretch[] => {
      const b = line[k + 1]
      return b === undefined || distanceM(a, b) === 0 ? [] : [{ line: index, a, b }]
    }),
  )

const endsOf = (lines: readonly TrackLine[]): readonly { readonly line: number; readonly at: LocalPoint }[] =>
  lines.flatMap(({ line }, index) =>
    [line[0], line[line.length - 1]].flatMap((at) => (at === undefined ? [] : [{ line: index, at }])),
  )

/** The stretch nearest to a point among those of a line, or of all lines but one. */
const nearest = (point: LocalPoint, stretches: readonly Stretch[]) =>
  stretches.reduce<{ readonly stretch: Stretch; readonly foot: Foot } | undefined>((best, stretch) => {
    const foot = footOn(point, stretch.a, stretch.b)
    return best === undefined || foot.gapM < best.foot.gapM ? { stretch, foot } : best
  }, undefined)

/** Collects points, one for all that are the same. */
const pointList = () => {
  const points: LocalPoint[] = []
  const placeOf = (point: LocalPoint): number => {
    const known = points.findIndex((one) => distanceM(one, point) <= SAME_M)
    return known >= 0 ? known : points.push(point) - 1
  }
  return { points, placeOf }
}

/** The ends of tracks that nearly meet another one, with the point of it where they join. */
const joinsOf = (lines: readonly TrackLine[], stretches: readonly Stretch[]) =>
  endsOf(lines).flatMap(({ line, at }) => {
    const found = nearest(
      at,
      stretches.filter((stretch) => stretch.line !== line),
    )
    return found === undefined || found.foot.gapM > JOIN_M ? [] : [{ at, to: found.foot.point, ...found }]
  })

/** Where each line comes nearest to each door: there one gets on and off. */
const doorFeet = (lines: readonly TrackLine[], stretches: readonly Stretch[], doors: readonly LocalPoint[]) =>
  lines.flatMap((_, index) => {
    const own = stretches.filter((stretch) => stretch.line === index)
    return doors.flatMap((door) => nearest(door, own) ?? [])
  })

/**
 * Drawn lines as a network. Tracks meet where they share a point, where they cross, and where the end of one lies within 8 m of another.
 * `doors` are places that ways begin and end at: the nearest point of each track becomes a point of the net, so that one gets on there.
 */
export const trackNet = (lines: readonly TrackLine[], doors: readonly LocalPoint[]): TrackNet => {
  const stretches = stretchesOf(lines)
  const joins = joinsOf(lines, stretches)
  const feet = [...joins, ...doorFeet(lines, stretches, doors)]
  const { points, placeOf } = pointList()
  const tracks = stretches.flatMap((stretch): Track[] => {
    const { a, b, line } = stretch
    const crossings = stretches.flatMap((other) =>
      other === stretch ? [] : (crossingShare(a, b, other.a, other.b) ?? []),
    )
    const own = feet.filter((one) => one.stretch === stretch).map((one) => one.foot.share)
    const shares = [0, ...crossings, ...own, 1].sort((p, q) => p - q)
    const places = shares.map((share) =>
      placeOf({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) }),
    )
    const isOneWay = lines[line]?.isOneWay ?? false
    return places.flatMap((to, k) => {
      const from = places[k - 1]
      return from === undefined || from === to ? [] : [{ from, to, isOneWay }]
    })
  })
  const gaps = joins.map(({ at, to }): Track => ({ from: placeOf(at), to: placeOf(to) }))
  return { points, tracks: [...tracks, ...gaps.filter(({ from, to }) => from !== to)] }
}
