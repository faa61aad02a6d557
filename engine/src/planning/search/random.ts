/** A seeded source of whole numbers. Same seed, same numbers, in Node and in every browser. */
export type Random = {
  /** A whole number from 0 to `bound - 1`; `bound` from 1 to 2^31. */
  readonly below: (bound: number) => number
}

/** Draws thrown away at the start, so that near seeds part ways: after a dozen rounds every bit of the seed has reached every word. */
const WARM_UP = 15

/**
 * sfc32, a small fast counting generator of 32-bit integers: period at least 2^32, on average 2^127.
 * Source: Chris Doty-Humphrey, PractRand 0.93 (2014), `RNG/sfc.h`; the seeding is ours. A draw is scaled by
 * multiplication (Lemire, 'Fast random integer generation in an interval', ACM TOMACS 29(1), 2019) without its rejection step:
 * the bias is below bound / 2^32, of no weight in a search.
 *
 * @param seed any whole number; its low 32 bits count.
 */
export const randomOf = (seed: number): Random => {
  let a = 0
  let b = seed | 0
  let c = 0
  let counter = 1
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = ((c << 21) | (c >>> 11)) + sum
    c |= 0
    return sum >>> 0
  }
  for (let draw = 0; draw < WARM_UP; draw++) next()
  return { below: (bound) => Math.floor((next() / 4294967296) * bound) }
}
