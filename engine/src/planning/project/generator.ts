import type { Arcs, Network } from './network.ts'

/** A schedule in one direction of time, with the order of activities that gives it. Buffers, changed in place. */
export type Draft = {
  /** Activities in the order in which they are placed; each after all that it waits for. */
  readonly order: Int32Array
  /** Starts in the draft's own direction of time. */
  readonly starts: Int32Array
  /** Whether time runs backward. */
  backward: boolean
  makespan: number
}

/** Serial schedule generation for one network, with buffers of its own. */
export type Generator = {
  /**
   * Places `order[from]` and all after it, each as early as it can; what stands before must hold already. Sets starts and makespan.
   * Gives up (makespan `GIVEN_UP`) as soon as an activity and its tail show that the end would come after `limit`. Tells how many it placed.
   */
  readonly build: (draft: Draft, from: number, limit: number) => number
  /** Turns time round: sets the order of `into` by the finishes of `draft` (last first), and its direction; does not build it. */
  readonly turn: (draft: Draft, into: Draft) => void
  /** Sets the order of `into` by the starts of `draft`, in the same direction. */
  readonly sort: (draft: Draft, into: Draft) => void
}

/** Makespan of a draft that was given up half built; longer than any limit. */
export const GIVEN_UP = 2 ** 31 - 1

/** An empty draft. */
export const draftOf = (count: number): Draft => ({
  order: new Int32Array(count),
  starts: new Int32Array(count),
  backward: false,
  makespan: 0,
})

/** Copies a draft. */
export const copyDraft = (draft: Draft, into: Draft): void => {
  into.order.set(draft.order)
  into.starts.set(draft.starts)
  into.backward = draft.backward
  into.makespan = draft.makespan
}

/**
 * The generator of a network. The profile is a packed word for each time unit (see `Network`); an activity's place is sought from its
 * last unit back, so that a full unit skips all starts before it.
 */
export const generatorOf = (network: Network): Generator => {
  const { count, durations, demands, words, free, guards, horizon } = network
  const profile = new Int32Array((horizon + 1) * words)
  const firstFree = free[0]!
  const firstGuards = guards[0]!

  const fitOne = (activity: number, ready: number): number => {
    const duration = durations[activity]!
    const demand = demands[activity]!
    if (demand === 0) return ready
    let start = ready
    let checked = start
    for (let unit = start + duration - 1; unit >= checked; unit--) {
      if (((profile[unit]! - demand) & firstGuards) === firstGuards) continue
      checked = start + duration
      start = unit + 1
      unit = start + duration
    }
    const end = start + duration
    for (let unit = start; unit < end; unit++) profile[unit]! -= demand
    return start
  }

  const fitsAt = (activity: number, unit: number): boolean => {
    for (let word = 0; word < words; word++) {
      const guard = guards[word]!
      if (((profile[unit * words + word]! - demands[activity * words + word]!) & guard) !== guard)
        return false
    }
    return true
  }

  const book = (activity: number, start: number): void => {
    const end = start + durations[activity]!
    for (let unit = start; unit < end; unit++)
      for (let word = 0; word < words; word++)
        profile[unit * words + word]! -= demands[activity * words + word]!
  }

  const fitMany = (activity: number, ready: number): number => {
    const duration = durations[activity]!
    let start = ready
    for (let unit = start + duration - 1; unit >= start; unit--) {
      if (fitsAt(activity, unit)) continue
      start = unit + 1
      unit = start + duration
    }
    book(activity, start)
    return start
  }

  const clear = (until: number): void => {
    if (words === 1) profile.fill(firstFree, 0, until)
    else for (let slot = 0; slot < until * words; slot++) profile[slot] = free[slot % words]!
  }

  let used = horizon + 1
  const build = (draft: Draft, from: number, limit: number): number => {
    const { order, starts } = draft
    const { first, from: before, least, tails }: Arcs = draft.backward ? network.backward : network.forward
    clear(used)
    used = 0
    for (let at = 0; at < from; at++) {
      const activity = order[at]!
      const start = starts[activity]!
      book(activity, start)
      if (start + durations[activity]! > used) used = start + durations[activity]!
    }
    for (let at = from; at < count; at++) {
      const activity = order[at]!
      let ready = 0
      const last = first[activity + 1]!
      for (let arc = first[activity]!; arc < last; arc++) {
        const time = starts[before[arc]!]! + least[arc]!
        if (time > ready) ready = time
      }
      const start = words === 1 ? fitOne(activity, ready) : fitMany(activity, ready)
      starts[activity] = start
      if (start + durations[activity]! > used) used = start + durations[activity]!
      if (start + tails[activity]! > limit) {
        draft.makespan = GIVEN_UP
        return at + 1 - from
      }
    }
    draft.makespan = used
    return count - from
  }

  const buckets = new Int32Array(horizon + 2)
  const times = new Int32Array(count)
  /** Counting sort by `times`, all from 0 to `most`; activities of one time in order of their number, or against it. */
  const sortByTimes = (most: number, against: boolean, order: Int32Array): void => {
    buckets.fill(0, 0, most + 2)
    for (let activity = 0; activity < count; activity++) buckets[times[activity]! + 1]!++
    for (let bucket = 0; bucket < most; bucket++) buckets[bucket + 1]! += buckets[bucket]!
    for (let turn = 0; turn < count; turn++) {
      const activity = against ? count - 1 - turn : turn
      order[buckets[times[activity]!]!++] = activity
    }
  }

  return {
    build,
    turn: ({ starts, backward, makespan }, into) => {
      for (let activity = 0; activity < count; activity++)
        times[activity] = makespan - starts[activity]! - durations[activity]!
      into.backward = !backward
      sortByTimes(makespan, into.backward, into.order)
    },
    sort: ({ starts, backward, makespan }, into) => {
      times.set(starts)
      into.backward = backward
      sortByTimes(makespan, backward, into.order)
    },
  }
}
