/** How well a reckoned series follows a measured one. */
export type Agreement = {
  readonly n: number
  /** Mean of reckoned less measured. */
  readonly bias: number
  readonly rmse: number
  /** Correlation. */
  readonly r: number
}

/** Bias, root mean square error and correlation over the pairs of which both are known. */
export const agreement = (reckoned: ArrayLike<number>, measured: ArrayLike<number>): Agreement => {
  let [n, sx, sy, sxx, syy, sxy, see] = [0, 0, 0, 0, 0, 0, 0]
  for (let i = 0; i < Math.min(reckoned.length, measured.length); i++) {
    const [x, y] = [reckoned[i] ?? NaN, measured[i] ?? NaN]
    if (Number.isNaN(x) || Number.isNaN(y)) continue
    n++
    sx += x
    sy += y
    sxx += x * x
    syy += y * y
    sxy += x * y
    see += (x - y) ** 2
  }
  const spread = Math.sqrt((n * sxx - sx * sx) * (n * syy - sy * sy))
  return { n, bias: (sx - sy) / n, rmse: Math.sqrt(see / n), r: (n * sxy - sx * sy) / spread }
}
