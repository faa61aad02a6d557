import type { Project } from './project.ts'

/** Arcs into each activity, for one direction of time: those of `activity` are `first[activity]` to `first[activity + 1] - 1`. */
export type Arcs = {
  readonly first: Int32Array
  readonly from: Int32Array
  /** The activity starts at least so long after the start of `from`. */
  readonly least: Int32Array
  /** Least time from the start of each activity to the end of the project. */
  readonly tails: Int32Array
}

/**
 * A project without maximum lags, made ready for fast schedule generation. Activities are numbered in topological order here; `original`
 * leads back. The backward direction is the same project with time turned round: what ends last starts first.
 */
export type Network = {
  readonly count: number
  readonly original: Int32Array
  readonly durations: Int32Array
  readonly forward: Arcs
  readonly backward: Arcs
  readonly capacities: Int32Array
  /** Use of resources: row `activity * capacities.length + resource`. */
  readonly uses: Int32Array
  /** Words of the profile for each time unit; see `lanesOf`. */
  readonly words: number
  /** The same uses packed: row `activity * words + word`. */
  readonly demands: Int32Array
  /** All free, guard bits set; one for each word. */
  readonly free: Int32Array
  readonly guards: Int32Array
  /** No schedule that the generators make ends later. */
  readonly horizon: number
}

/** Whether each activity only waits for others to finish, and none needs more than there is: then every order of activities gives a schedule. */
export const isPlain = (project: Project): boolean => {
  const { durations, capacities, demands, lagFrom, lagMin } = project
  if (project.hasMaxLags) return false
  if (demands.some((use, at) => use > capacities[at % capacities.length]!)) return false
  for (let arc = 0; arc < lagFrom.length; arc++) if (lagMin[arc]! < durations[lagFrom[arc]!]!) return false
  return topologicalOrder(project) !== null
}

/** Activities so that every arc leads onward, the those ready longest first; null when arcs go round in a circle. */
const topologicalOrder = ({ durations, lagFrom, lagTo }: Project): Int32Array | null => {
  const count = durations.length
  const waits = new Int32Array(count)
  const onward = Array.from({ length: count }, (): number[] => [])
  lagFrom.forEach((from, arc) => {
    waits[lagTo[arc]!]!++
    onward[from]!.push(lagTo[arc]!)
  })
  const order = new Int32Array(count)
  const ready = Array.from({ length: count }, (_, activity) => activity).filter(
    (activity) => waits[activity] === 0,
  )
  let placed = 0
  for (let next = ready.shift(); next !== undefined; next = ready.shift()) {
    order[placed++] = next
    for (const to of onward[next]!) if (--waits[to]! === 0) ready.push(to)
  }
  return placed === count ? order : null
}

/** Arcs gathered by the activity they lead to. */
const arcsInto = (
  count: number,
  { from, to, least }: { readonly from: Int32Array; readonly to: Int32Array; readonly least: Int32Array },
): Omit<Arcs, 'tails'> => {
  const first = new Int32Array(count + 1)
  for (const activity of to) first[activity + 1]!++
  for (let activity = 0; activity < count; activity++) first[activity + 1]! += first[activity]!
  const at = first.slice()
  const gathered = { first, from: new Int32Array(from.length), least: new Int32Array(from.length) }
  to.forEach((activity, arc) => {
    const slot = at[activity]!++
    gathered.from[slot] = from[arc]!
    gathered.least[slot] = least[arc]!
  })
  return gathered
}

/** Earliest start of each activity by the arcs alone; `order` meets each activity after all that it waits for. */
const headsOf = ({ first, from, least }: Omit<Arcs, 'tails'>, order: Iterable<number>): Int32Array => {
  const heads = new Int32Array(first.length - 1)
  for (const activity of order)
    for (let arc = first[activity]!; arc < first[activity + 1]!; arc++)
      heads[activity] = Math.max(heads[activity]!, heads[from[arc]!]! + least[arc]!)
  return heads
}

/** Bits of a word that lanes may fill: the sign bit stays free, so that differences never overflow. */
const WORD_BITS = 31

/**
 * Where each resource lies in the packed profile. A resource takes a lane of as many bits as its capacity needs and one guard bit above
 * them; lanes share a word as long as they fit. A demand fits at a time unit when `(free - demand) & guards` leaves every guard
 * standing: one subtraction checks all resources of a word (Lamport, 'Multiple byte processing with full-word instructions',
 * Communications of the ACM 18(8), 1975).
 */
const lanesOf = (
  capacities: Int32Array,
): {
  readonly words: number
  readonly word: Int32Array
  readonly shift: Int32Array
  readonly bits: Int32Array
} => {
  const word = new Int32Array(capacities.length)
  const shift = new Int32Array(capacities.length)
  const bits = capacities.map((capacity) => 32 - Math.clz32(capacity))
  let words = 1
  let used = 0
  bits.forEach((wide, resource) => {
    if (used + wide + 1 > WORD_BITS) {
      words++
      used = 0
    }
    word[resource] = words - 1
    shift[resource] = used
    used += wide + 1
  })
  return { words, word, shift, bits }
}

const usesOf = ({ capacities, demands }: Project, order: Int32Array): Int32Array => {
  const resources = capacities.length
  const uses = new Int32Array(demands.length)
  order.forEach((activity, place) => {
    uses.set(demands.subarray(activity * resources, (activity + 1) * resources), place * resources)
  })
  return uses
}

/** Packs capacities and demands into lanes. */
const packed = (
  project: Project,
  order: Int32Array,
): Pick<Network, 'words' | 'demands' | 'free' | 'guards'> => {
  const { capacities } = project
  const { words, word, shift, bits } = lanesOf(capacities)
  const free = new Int32Array(words)
  const guards = new Int32Array(words)
  const demands = new Int32Array(order.length * words)
  capacities.forEach((capacity, resource) => {
    const guard = 1 << (shift[resource]! + bits[resource]!)
    guards[word[resource]!]! |= guard
    free[word[resource]!]! |= guard | (capacity << shift[resource]!)
    order.forEach((activity, place) => {
      const units = project.demands[activity * capacities.length + resource]!
      demands[place * words + word[resource]!]! |= units << shift[resource]!
    })
  })
  return { words, demands, free, guards }
}

/** Makes a plain project (see `isPlain`) ready; null for any other. */
export const networkOf = (project: Project): Network | null => {
  const order = isPlain(project) ? topologicalOrder(project) : null
  if (order === null) return null
  const count = order.length
  const place = new Int32Array(count)
  order.forEach((activity, at) => (place[activity] = at))
  const durations = order.map((activity) => project.durations[activity]!)
  const from = project.lagFrom.map((activity) => place[activity]!)
  const to = project.lagTo.map((activity) => place[activity]!)
  // With time turned round an activity's start is its finish, so that a lag from start to start gains the one duration and loses the other.
  const back = project.lagMin.map((least, arc) => least + durations[to[arc]!]! - durations[from[arc]!]!)
  const into = arcsInto(count, { from, to, least: project.lagMin })
  const outOf = arcsInto(count, { from: to, to: from, least: back })
  const onward = Array.from({ length: count }, (_, activity) => activity)
  const untilEnd = headsOf(outOf, onward.toReversed())
  const sinceStart = headsOf(into, onward)
  return {
    count,
    original: order,
    durations,
    forward: { ...into, tails: durations.map((duration, activity) => duration + untilEnd[activity]!) },
    backward: { ...outOf, tails: durations.map((duration, activity) => duration + sinceStart[activity]!) },
    capacities: project.capacities,
    uses: usesOf(project, order),
    ...packed(project, order),
    horizon: horizonOf(durations, from, to, project.lagMin, back),
  }
}

/** No activity starts later than the sum of what each one before it can hold back: its duration or its longest lag, in either direction. */
const horizonOf = (
  durations: Int32Array,
  from: Int32Array,
  to: Int32Array,
  least: Int32Array,
  back: Int32Array,
): number => {
  const reach = durations.slice()
  from.forEach((activity, arc) => {
    reach[activity] = Math.max(reach[activity]!, least[arc]!)
    reach[to[arc]!] = Math.max(reach[to[arc]!]!, back[arc]!)
  })
  return reach.reduce((sum, time) => sum + time, 1)
}
