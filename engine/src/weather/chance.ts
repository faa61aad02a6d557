import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** Seeded draws. Same seed, same draws, in Node and in the browser. */
export type Chance = {
  /** Uniform in [0, 1). */
  readonly uniform: () => number
  /** Standard normal. */
  readonly normal: () => number
  /** Exponential with mean 1. */
  readonly exponential: () => number
}

/** Draws from a whole-number seed. */
export const chanceOf = (seed: number): Chance => {
  const source = xoroshiro128plus(seed)
  const uniform = (): number => uniformFloat64(source)
  let spare = NaN
  const normal = (): number => {
    if (!Number.isNaN(spare)) {
      const kept = spare
      spare = NaN
      return kept
    }
    // Box and Muller 1958: two normals from two uniforms.
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()))
    const angle = 2 * Math.PI * uniform()
    spare = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
  return { uniform, normal, exponential: () => -Math.log(1 - uniform()) }
}

/** A seed of its own for a numbered part (a day, a member) of a seeded whole, so that a part comes out alike whatever is drawn round it. Mixing of splitmix32. */
export const seedOfPart = (seed: number, part: number): number => {
  let z = (Math.imul(seed | 0, 0x9e3779b9) + Math.imul((part | 0) + 1, 0x85ebca6b)) | 0
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad)
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97)
  return (z ^ (z >>> 15)) | 0
}
