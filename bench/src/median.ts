/** The middle one of some figures, the upper one of an even number; not a number where there are none. */
export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN
