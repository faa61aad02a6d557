/** In which order neighbouring rows are worked: each next one, or leaving some out so that turns get wide, then filling in. */
export type RowOrder = 'backAndForth' | 'skip'

/** Rows between one run and the next that a turn of this radius needs: `ceil(2 r / step)`, at least 1. */
export const rowsForTurn = (radiusM: number, stepM: number): number =>
  Math.max(1, Math.ceil((2 * radiusM) / stepM - 1e-9))

/**
 * The rows 0 to count - 1 in working order. `reach` 1 is back and forth. A larger reach works blocks of two lands: out by `reach + 1` rows,
 * home by `reach`, so every turn inside a block spans at least `reach` rows; only the step from block to block may be tight.
 * The last, smaller block reaches as far as its rows allow.
 */
export const rowsInOrder = (count: number, reach: number): readonly number[] => {
  if (reach <= 1) return Array.from({ length: count }, (_, k) => k)
  const rows: number[] = []
  for (let start = 0; start < count;) {
    const land = Math.min(reach + 1, Math.ceil((count - start) / 2))
    const end = Math.min(count, start + 2 * land)
    for (let k = 0; k < land; k++) {
      rows.push(start + k)
      if (start + land + k < end) rows.push(start + land + k)
    }
    start = end
  }
  return rows
}
