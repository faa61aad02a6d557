/** A one-way link between two nodes. */
export type Link = { readonly from: number; readonly to: number; readonly lengthM: number }

/** A path and its length. */
export type Path = { readonly lengthM: number; readonly nodes: readonly number[] }

/** The shortest path over links of length 0 or more; undefined when there is none (Dijkstra 1959, without a heap: courses are small). */
export const shortestPath = (
  count: number,
  links: readonly Link[],
  from: number,
  to: number,
): Path | undefined => {
  const outOf = Array.from({ length: count }, (): Link[] => [])
  for (const link of links) outOf[link.from]?.push(link)
  const lengthM = new Float64Array(count).fill(Infinity)
  const before = new Int32Array(count).fill(-1)
  const done = new Uint8Array(count)
  lengthM[from] = 0
  for (;;) {
    let node = -1
    for (let k = 0; k < count; k++)
      if (done[k] === 0 && (lengthM[k] ?? Infinity) < (node < 0 ? Infinity : (lengthM[node] ?? Infinity)))
        node = k
    if (node < 0) return undefined
    if (node === to) break
    done[node] = 1
    for (const link of outOf[node] ?? []) {
      const reachedM = (lengthM[node] ?? Infinity) + link.lengthM
      if (reachedM >= (lengthM[link.to] ?? Infinity)) continue
      lengthM[link.to] = reachedM
      before[link.to] = node
    }
  }
  const nodes = [to]
  for (let node = to; node !== from;) {
    node = before[node] ?? from
    nodes.unshift(node)
  }
  return { lengthM: lengthM[to] ?? 0, nodes }
}
