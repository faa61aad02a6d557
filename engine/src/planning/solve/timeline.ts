/**
 * Days of many people or machines in one flat array: each row holds its entries in order of start, `size` numbers each, the first of which is the start.
 * Changed in place.
 */
export type Timeline = {
  /** Entries in each row. */
  readonly count: Int32Array
  readonly data: Int32Array
  /** Most entries in a row. */
  readonly room: number
  /** Numbers in an entry. */
  readonly size: number
}

/** Empty days. */
export const newTimeline = (rows: number, room: number, size: number): Timeline => ({
  count: new Int32Array(rows),
  data: new Int32Array(rows * room * size),
  room,
  size,
})

/** Where an entry begins in the data. */
export const entryAt = (line: Timeline, row: number, index: number): number =>
  (row * line.room + index) * line.size

/** First entry of a row that starts at or after a minute; the number of entries where none does. */
export const firstFrom = (line: Timeline, row: number, minute: number): number => {
  const { data, size } = line
  const base = row * line.room * size
  let low = 0
  let high = line.count[row] ?? 0
  while (low < high) {
    const middle = (low + high) >> 1
    if ((data[base + middle * size] ?? 0) < minute) low = middle + 1
    else high = middle
  }
  return low
}

/** Makes room for an entry and returns where its numbers go. */
export const insertAt = (line: Timeline, row: number, index: number): number => {
  const { data, size } = line
  const count = line.count[row] ?? 0
  const at = entryAt(line, row, index)
  // A loop, since most days end a few entries behind: calling into the engine for so few numbers costs more.
  for (let i = entryAt(line, row, count) - 1; i >= at; i--) data[i + size] = data[i] ?? 0
  line.count[row] = count + 1
  return at
}

/** Takes an entry out. */
export const removeAt = (line: Timeline, row: number, index: number): void => {
  const { data, size } = line
  const count = line.count[row] ?? 0
  const last = entryAt(line, row, count)
  for (let i = entryAt(line, row, index) + size; i < last; i++) data[i - size] = data[i] ?? 0
  line.count[row] = count - 1
}
