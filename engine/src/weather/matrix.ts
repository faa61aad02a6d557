/** A square matrix by rows. */
export type Matrix = readonly (readonly number[])[]

const at = (m: Matrix, i: number, j: number): number => m[i]?.[j] ?? 0

/** A times B. */
export const times = (a: Matrix, b: Matrix): number[][] =>
  a.map((row) => a.map((_, j) => row.reduce((sum, value, k) => sum + value * at(b, k, j), 0)))

/** A less B. */
export const less = (a: Matrix, b: Matrix): number[][] =>
  a.map((row, i) => row.map((value, j) => value - at(b, i, j)))

/** Rows as columns. */
export const transposed = (a: Matrix): number[][] => a.map((_, i) => a.map((row) => row[i] ?? 0))

/** Inverse by Gauss and Jordan with the largest pivot; a matrix that has none gives figures that are not finite. */
export const inverse = (a: Matrix): number[][] => {
  const n = a.length
  const work = a.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))])
  for (let c = 0; c < n; c++) {
    const pivot = work.reduce(
      (best, row, i) => (i >= c && Math.abs(row[c] ?? 0) > Math.abs(work[best]?.[c] ?? 0) ? i : best),
      c,
    )
    const swapped = work[pivot] ?? []
    work[pivot] = work[c] ?? []
    const scale = swapped[c] ?? 0
    work[c] = swapped.map((value) => value / scale)
    for (let i = 0; i < n; i++)
      if (i !== c) {
        const factor = work[i]?.[c] ?? 0
        work[i] = (work[i] ?? []).map((value, j) => value - factor * (work[c]?.[j] ?? 0))
      }
  }
  return work.map((row) => row.slice(n))
}

/** Lower triangle L with L L' = A (Cholesky). Where A is not quite positive, from rounding, the pivot is held just over nought. */
export const lowerRoot = (a: Matrix): number[][] => {
  const root = a.map((row) => row.map(() => 0))
  for (let i = 0; i < a.length; i++)
    for (let j = 0; j <= i; j++) {
      let sum = at(a, i, j)
      for (let k = 0; k < j; k++) sum -= at(root, i, k) * at(root, j, k)
      const row = root[i]
      if (row !== undefined) row[j] = i === j ? Math.sqrt(Math.max(sum, 1e-9)) : sum / at(root, j, j)
    }
  return root
}

/** Solves A x = b. */
export const solve = (a: Matrix, b: readonly number[]): number[] =>
  inverse(a).map((row) => row.reduce((sum, value, k) => sum + value * (b[k] ?? 0), 0))
