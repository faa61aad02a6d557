import { coordinate } from './drawing.ts'
import { scatteredOnLine } from './scatter.ts'

/** A point of a drawing, px. */
export type Point = readonly [x: number, y: number]

/** Pixels between the bends of a drawn line. */
const BEND_PX = 26

/**
 * Path data of a line as a hand draws it: straight in the large, off by at most `wanderPx` on the way, exact at both ends.
 * Never used where a person reads a measure off the line's middle.
 */
export const inkLine = (from: Point, to: Point, wanderPx = 0.7): string => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy)
  const bends = Math.max(1, Math.round(length / BEND_PX))
  const [acrossX, acrossY] = length === 0 ? [0, 0] : [-dy / length, dx / length]
  const points = Array.from({ length: bends + 1 }, (_, n): Point => {
    const off =
      n === 0 || n === bends ? 0 : (scatteredOnLine(n + Math.round(from[0] + from[1])) - 0.5) * 2 * wanderPx
    return [from[0] + (dx * n) / bends + acrossX * off, from[1] + (dy * n) / bends + acrossY * off]
  })
  return smooth(points)
}

/** Path data of a smooth curve through points (each middle point is a quadratic control; ends are met exactly). */
export const smooth = (points: readonly Point[]): string => {
  const [first, ...rest] = points
  if (first === undefined) return ''
  const at = ([x, y]: Point): string => `${coordinate(x)} ${coordinate(y)}`
  const bends = rest.slice(0, -1).map((point, n) => {
    const next = rest[n + 1] ?? point
    const middle: Point = n === rest.length - 2 ? next : [(point[0] + next[0]) / 2, (point[1] + next[1]) / 2]
    return `Q${at(point)} ${at(middle)}`
  })
  const last = rest.at(-1)
  return `M${at(first)}${bends.length > 0 ? bends.join('') : last === undefined ? '' : `L${at(last)}`}`
}
