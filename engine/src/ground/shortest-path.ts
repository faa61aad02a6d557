/** A one-way link between two nodes. */
export type Link = { readonly from: number; readonly to: number; readonly lengthM: number }

/** Links sorted by the node they start from. */
export type Links = readonly (readonly Link[])[]

/** Sorts links by the node that they start from. */
export const linksByNode = (count: number, links: readonly Link[]): Links => {
  const outOf = Array.from({ length: count }, (): Link[] => [])
  for (const link of links) outOf[link.from]?.push(link)
  return outOf
}

const nearestOpen = (lengthM: Float64Array, done: Uint8Array): number => {
  let node = -1
  let leastM = Infinity
  for (let k = 0; k < lengthM.length; k++) {
    const reachedM = lengthM[k] ?? Infinity
    if (done[k] === 0 && reachedM < leastM) {
      node = k
      leastM = reachedM
    }
  }
  return node
}

/** Lengths of the shortest paths from one node to all others over links of length 0 or more; Infinity where there is none (Dijkstra 1959, without a heap: courses are small). */
export const lengthsFrom = (links: Links, from: number): Float64Array => {
  const lengthM = new Float64Array(links.length).fill(Infinity)
  const done = new Uint8Array(links.length)
  lengthM[from] = 0
  for (let node = from; node >= 0; node = nearestOpen(lengthM, done)) {
    done[node] = 1
    for (const link of links[node] ?? []) {
      const reachedM = (lengthM[node] ?? Infinity) + link.lengthM
      if (reachedM < (lengthM[link.to] ?? Infinity)) lengthM[link.to] = reachedM
    }
  }
  return lengthM
}
