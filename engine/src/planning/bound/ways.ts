/** The shortest ways between places, by way of others too (Floyd 1962): row `from * places + to`, minutes. */
export const shortestWays = (travelMin: Int32Array, places: number): Int32Array => {
  const ways = Int32Array.from(travelMin)
  for (let via = 0; via < places; via++)
    for (let from = 0; from < places; from++) {
      const first = ways[from * places + via] ?? 0
      for (let to = 0; to < places; to++) {
        const round = first + (ways[via * places + to] ?? 0)
        if (round < (ways[from * places + to] ?? 0)) ways[from * places + to] = round
      }
    }
  return ways
}
