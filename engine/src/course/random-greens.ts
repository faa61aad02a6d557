import type { LocalPoint, Plane } from '../ground/plane.ts'
import { signedAreaM2 } from '../ground/polygon.ts'
import type { Green } from './course.ts'
import type { Draw } from './draw.ts'
import { readOutline, toPosition, type OutlineFacts } from './outline.ts'
import type { Position } from './read-geometry.ts'
import { assert } from '../assert.ts'

/** A round outline with two to four waves on it. Its radius never reaches zero, so it never crosses itself. */
const wavyOutline = (draw: Draw, middle: LocalPoint, areaM2: number): readonly LocalPoint[] => {
  const points = draw.whole(14, 30)
  const waves = [2, 3, 4].map((count) => ({
    count,
    size: draw.stepped(0, 0.36 / count, 0.01),
    turn: draw.stepped(0, 6.2, 0.1),
  }))
  const ring = Array.from({ length: points }, (_, i): LocalPoint => {
    const angle = (2 * Math.PI * i) / points
    const radius = waves.reduce((r, { count, size, turn }) => r + size * Math.cos(count * angle + turn), 1)
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) }
  })
  const scale = Math.sqrt(areaM2 / signedAreaM2(ring))
  return ring.map(({ x, y }) => ({ x: middle.x + x * scale, y: middle.y + y * scale }))
}

/** Middles at least 90 m apart inside 1.2 by 0.9 km round the shed; the box grows when it gets crowded. */
const middles = (draw: Draw, count: number): readonly LocalPoint[] => {
  const found: LocalPoint[] = []
  for (let tries = 0; found.length < count; tries++) {
    const grown = 1 + Math.floor(tries / 60) / 4
    const spot = { x: draw.whole(-600, 600) * grown, y: draw.whole(-450, 450) * grown }
    if (found.every(({ x, y }) => Math.hypot(spot.x - x, spot.y - y) >= 90)) found.push(spot)
  }
  return found
}

const measured = (rings: readonly (readonly Position[])[]): OutlineFacts => {
  const told = readOutline(rings, { feature: null, name: null, path: 'outline' })
  assert(told.ok, 'a wavy outline is a green')
  return told.value
}

const randomGreen = (
  draw: Draw,
  plane: Plane,
  ground: { readonly middle: LocalPoint; readonly n: number },
): Green => {
  const { middle, n } = ground
  const number = String(n + 1).padStart(2, '0')
  const wantedM2 = draw.whole(150, 800)
  const ring = draw.chance(50) ? wavyOutline(draw, middle, wantedM2).map((p) => toPosition(plane, p)) : null
  const rings = ring === null ? null : [[...ring, ...ring.slice(0, 1)]]
  const told = rings === null ? null : measured(rings)
  const at: Position = told === null ? toPosition(plane, middle) : told.at
  const weak = draw.chance(15)
  return {
    id: `g${number}`,
    name: `Green ${n + 1}`,
    hole: n < 18 ? n + 1 : null,
    areaM2: told === null ? wantedM2 : told.areaM2,
    ...(rings === null
      ? {}
      : { outline: rings.map((r) => r.map(([lon, lat]): [number, number] => [lon, lat])) }),
    at: [...at],
    rootzone: { kind: draw.chance(85) ? 'sand' : 'soil', goodDepthMm: draw.whole(8, 30) * 10 },
    drainage: draw.one(['well', 'moderate', 'poor']),
    shade: draw.one(['open', 'part', 'dense']),
    weak,
    organicTests: [],
    services: [],
    servicesChecked: true,
  }
}

/** Made-up greens round the shed: 150 to 800 m2, about half of them with an outline, one in seven weak. */
export const randomGreens = (draw: Draw, plane: Plane, count: number): Green[] =>
  middles(draw, count).map((middle, n) => randomGreen(draw, plane, { middle, n }))
