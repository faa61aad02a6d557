import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { assert } from '../assert.ts'

/** Draws from one seed, in the order in which they are asked for: the same seed and order, the same values. */
export type Draw = {
  /** A whole number from `min` to `max`, both included. */
  readonly whole: (min: number, max: number) => number
  /** A number from `min` to `max` in steps of `step`, so that files stay short and every engine agrees on the digits. */
  readonly stepped: (min: number, max: number, step: number) => number
  /** True `percent` times in a hundred. */
  readonly chance: (percent: number) => boolean
  /** One of a list that is not empty. */
  readonly one: <T>(list: readonly T[]) => T
  /** Each of a list with the chance of `percent`, in its order. */
  readonly some: <T>(list: readonly T[], percent: number) => T[]
}

/** Draws from a seed, any whole number. */
export const drawFrom = (seed: number): Draw => {
  const source = xoroshiro128plus(seed)
  const whole = (min: number, max: number): number => uniformInt(source, min, max)
  const chance = (percent: number): boolean => uniformFloat64(source) * 100 < percent
  return {
    whole,
    stepped: (min, max, step) => {
      const steps = whole(0, Math.floor((max - min) / step + 1e-9))
      return Number((min + steps * step).toFixed(6))
    },
    chance,
    one: (list) => {
      assert(list.length > 0, 'one of a list needs a list that is not empty')
      return list[whole(0, list.length - 1)] as (typeof list)[number]
    },
    some: (list, percent) => list.filter(() => chance(percent)),
  }
}
