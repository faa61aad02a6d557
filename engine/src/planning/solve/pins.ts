import type { Committed } from '../committed.ts'
import type { Ground } from './ground.ts'

/** What pins hold the search to. */
export type PinnedSteps = {
  /** By step: the minute at which it starts (-1: any) and its machine (-1: any). */
  readonly start: Int32Array
  readonly machine: Int32Array
  /** By step: its people, where they are named. */
  readonly people: ReadonlyMap<number, readonly number[]>
  /** By green: the day on which it is opened, -1 for any. */
  readonly day: Int32Array
  /** By green: 1 where anything of it is pinned; such greens are placed before the others. */
  readonly hasPin: Uint8Array
  /** By green: 1 where its pin stands though it breaks a rule. */
  readonly stands: Uint8Array
}

/** Reads the pins. A pinned step between opening and clearing binds the opening to its day. `standing`: greens whose pins stand whatever they break. */
export const pinsOf = (
  ground: Ground,
  committed: Committed | undefined,
  standing: readonly number[] = [],
): PinnedSteps => {
  const start = new Int32Array(ground.steps).fill(-1)
  const machine = new Int32Array(ground.steps).fill(-1)
  const people = new Map<number, readonly number[]>()
  const day = new Int32Array(ground.greens).fill(-1)
  const hasPin = new Uint8Array(ground.greens)
  const stands = new Uint8Array(ground.greens)
  for (const green of standing) stands[green] = 1
  for (const pin of committed?.pins ?? []) {
    const open = ground.openStep[pin.green] ?? 0
    hasPin[pin.green] = 1
    if (pin.kind === 'green') {
      day[pin.green] = pin.day
      if (pin.openMin !== null) start[open] = pin.openMin
      continue
    }
    const step = (ground.firstStep[pin.green] ?? 0) + pin.step
    start[step] = pin.startMin
    machine[step] = pin.machine ?? -1
    if (pin.people !== null) people.set(step, pin.people)
    if (step >= open && step <= (ground.clearStep[pin.green] ?? 0))
      day[pin.green] = ground.problem.days.findIndex(({ endMin }) => pin.startMin < endMin)
  }
  return { start, machine, people, day, hasPin, stands }
}
