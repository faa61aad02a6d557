/** A point of the demo's own plane, metres: x to the east, y to the north. */
export type Spot = readonly [x: number, y: number]

/** One wave on a round outline: `count` bulges of `size` (share of the radius), turned by `turnDeg`. */
export type Wave = readonly [count: number, size: number, turnDeg: number]

const RAD = Math.PI / 180

/** Area inside a ring of spots, m2 (shoelace), positive when counter-clockwise. The ring is not closed. */
export const ringAreaM2 = (ring: readonly Spot[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y]
    return sum + x * nextY - nextX * y
  }, 0) / 2

const centreOf = (ring: readonly Spot[]): Spot => {
  const area = ringAreaM2(ring)
  let [cx, cy] = [0, 0]
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y]
    const cross = x * nextY - nextX * y
    cx += (x + nextX) * cross
    cy += (y + nextY) * cross
  })
  return [cx / (6 * area), cy / (6 * area)]
}

/** A round outline with waves on it: kidneys, pears, lobes. */
export const waved = (points: number, waves: readonly Wave[]): readonly Spot[] =>
  Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points
    const radius = waves.reduce(
      (sum, [count, size, turnDeg]) => sum + size * Math.cos(count * angle + turnDeg * RAD),
      1,
    )
    return [radius * Math.cos(angle), radius * Math.sin(angle)]
  })

/**
 * A bent band with round ends: a boomerang. The spine is part of a circle of radius 1 over `bendDeg`;
 * the band is `halfWidth` to each side in the middle and a little wider at one end than at the other.
 */
export const bent = (points: number, bendDeg: number, halfWidth: number): readonly Spot[] => {
  const half = (bendDeg * RAD) / 2
  const side = Math.floor(points / 2) - 4
  const width = (t: number): number => halfWidth * (1 + 0.22 * t + 0.12 * Math.cos(3 * t))
  const along = (t: number, sign: number): Spot => {
    const radius = 1 + sign * width(t)
    return [radius * Math.sin(t * half), radius * Math.cos(t * half)]
  }
  const cap = (end: 1 | -1): readonly Spot[] =>
    Array.from({ length: 4 }, (_, i) => {
      const turn = ((i + 1) / 5) * Math.PI
      const across = end * Math.cos(turn) * width(end)
      const out = Math.sin(turn) * width(end)
      const radius = 1 + across
      return [
        radius * Math.sin(end * half) + end * out * Math.cos(half),
        radius * Math.cos(half) - out * Math.sin(half),
      ]
    })
  const steps = Array.from({ length: side }, (_, i) => -1 + (2 * i) / (side - 1))
  return [
    ...steps.map((t) => along(t, 1)),
    ...cap(1),
    ...steps.map((t) => along(-t, -1)),
    ...cap(-1),
  ].toReversed()
}

/** The shape at a place of the course: scaled to its area, turned, its centre of gravity on the spot. */
export const placed = (
  shape: readonly Spot[],
  at: { readonly spot: Spot; readonly areaM2: number; readonly turnDeg: number },
): readonly Spot[] => {
  const [cx, cy] = centreOf(shape)
  const scale = Math.sqrt(at.areaM2 / ringAreaM2(shape))
  const [cos, sin] = [Math.cos(at.turnDeg * RAD), Math.sin(at.turnDeg * RAD)]
  return shape.map(([x, y]) => {
    const [dx, dy] = [(x - cx) * scale, (y - cy) * scale]
    return [at.spot[0] + dx * cos - dy * sin, at.spot[1] + dx * sin + dy * cos]
  })
}
