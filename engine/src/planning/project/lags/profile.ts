import type { Project } from '../project.ts'
import { raise, REASON, type Bounds } from './bounds.ts'

/**
 * Load of the resources from *sure parts*: between its latest start and its earliest end an activity runs in every schedule below the present node.
 * The load is held cell by cell (time x resource) and changes only where a sure part grows.
 */
export type Profile = {
  readonly project: Project
  /** Cells of time. */
  readonly horizon: number
  /** Load: row `time * resources + resource`. */
  readonly load: Int32Array
  /** Sure part of each activity that stands in `load`: from `begin` until before `end`; begin >= end = none. */
  readonly begin: Int32Array
  readonly end: Int32Array
  /** Sure parts before they grew, to go back to. */
  undo: { readonly activity: Int32Array; readonly begin: Int32Array; readonly end: Int32Array }
  undoSize: number
  undoStart: Int32Array
  /** Activities whose bounds changed since the last look. */
  readonly changed: Int32Array
  readonly isChanged: Uint8Array
  changedCount: number
  /** Cells of each resource whose load grew in this look: from `low` until before `high`. */
  readonly low: Int32Array
  readonly high: Int32Array
  /** Resources that each activity uses: `uses[a]` to `uses[a + 1] - 1`, into `used`. */
  readonly uses: Int32Array
  readonly used: Int32Array
  /** The overfull cell (time * resources + resource), when the look failed by load alone; else -1. */
  overfull: number
}

/** An empty profile for starts within the present bounds. */
export const profileOf = (project: Project, bounds: Bounds): Profile => {
  const activities = project.durations.length
  const resources = project.capacities.length
  let horizon = 1
  const uses = new Int32Array(activities + 1)
  const used: number[] = []
  for (let a = 0; a < activities; a++) {
    horizon = Math.max(horizon, -bounds.value[2 * a + 1]! + project.durations[a]!)
    if (project.durations[a]! > 0)
      for (let r = 0; r < resources; r++) if (project.demands[a * resources + r]! > 0) used.push(r)
    uses[a + 1] = used.length
  }
  const profile: Profile = {
    project,
    horizon,
    load: new Int32Array(horizon * resources),
    begin: new Int32Array(activities),
    end: new Int32Array(activities),
    undo: undoOf(4 * activities),
    undoSize: 0,
    undoStart: new Int32Array(activities + 2),
    changed: new Int32Array(activities),
    isChanged: new Uint8Array(activities),
    changedCount: 0,
    low: new Int32Array(resources),
    high: new Int32Array(resources),
    uses,
    used: Int32Array.from(used),
    overfull: -1,
  }
  for (let a = 0; a < activities; a++) noteChange(profile, a)
  return profile
}

const undoOf = (entries: number) => ({
  activity: new Int32Array(entries),
  begin: new Int32Array(entries),
  end: new Int32Array(entries),
})

/** Asks for a look at an activity. Those that use nothing are passed over. */
export const noteChange = (profile: Profile, activity: number): void => {
  if (profile.isChanged[activity] === 1 || profile.uses[activity] === profile.uses[activity + 1]) return
  profile.isChanged[activity] = 1
  profile.changed[profile.changedCount++] = activity
}

/** Remembers where a new level of decisions begins. */
export const openLevel = (profile: Profile, level: number): void => {
  if (level >= profile.undoStart.length) {
    const wider = new Int32Array(2 * level)
    wider.set(profile.undoStart)
    profile.undoStart = wider
  }
  profile.undoStart[level] = profile.undoSize
}

/** Adds to (or, with sign -1, takes off) the load of an activity over some cells; the first overfull cell or -1. */
const addLoad = (profile: Profile, activity: number, from: number, until: number, sign: number): number => {
  const { uses, used, load, project } = profile
  const { capacities, demands } = project
  const resources = capacities.length
  let overfull = -1
  for (let at = uses[activity]!; at < uses[activity + 1]!; at++) {
    const resource = used[at]!
    const demand = sign * demands[activity * resources + resource]!
    const capacity = capacities[resource]!
    if (from < profile.low[resource]!) profile.low[resource] = from
    if (until > profile.high[resource]!) profile.high[resource] = until
    for (let time = from; time < until; time++) {
      const cell = time * resources + resource
      load[cell]! += demand
      if (load[cell]! > capacity) overfull = cell
    }
  }
  return overfull
}

/** Goes back to the sure parts of a level above (of this level's own, when it is the present one). */
export const backToLevel = (profile: Profile, level: number, present: number): void => {
  for (let at = 0; at < profile.changedCount; at++) profile.isChanged[profile.changed[at]!] = 0
  profile.changedCount = 0
  if (level >= present) return
  const start = profile.undoStart[level + 1]!
  while (profile.undoSize > start) {
    const entry = --profile.undoSize
    const activity = profile.undo.activity[entry]!
    const begin = profile.undo.begin[entry]!
    const end = profile.undo.end[entry]!
    const wasBegin = profile.begin[activity]!
    const wasEnd = profile.end[activity]!
    if (begin >= end) addLoad(profile, activity, wasBegin, wasEnd, -1)
    else {
      if (wasBegin < begin) addLoad(profile, activity, wasBegin, begin, -1)
      if (end < wasEnd) addLoad(profile, activity, end, wasEnd, -1)
    }
    profile.begin[activity] = begin
    profile.end[activity] = end
  }
}

/** Enters what an activity's sure part grew by; the first overfull cell or -1. */
const growPart = (profile: Profile, bounds: Bounds, activity: number): number => {
  const begin = -bounds.value[2 * activity + 1]!
  const end = bounds.value[2 * activity]! + profile.project.durations[activity]!
  if (begin >= end) return -1
  const wasBegin = profile.begin[activity]!
  const wasEnd = profile.end[activity]!
  if (begin === wasBegin && end === wasEnd) return -1
  keepForUndo(profile, activity)
  profile.begin[activity] = begin
  profile.end[activity] = end
  if (wasBegin >= wasEnd) return addLoad(profile, activity, begin, end, 1)
  const before = begin < wasBegin ? addLoad(profile, activity, begin, wasBegin, 1) : -1
  const after = wasEnd < end ? addLoad(profile, activity, wasEnd, end, 1) : -1
  return Math.max(before, after)
}

const keepForUndo = (profile: Profile, activity: number): void => {
  const entry = profile.undoSize++
  if (entry === profile.undo.activity.length) {
    const wider = undoOf(2 * entry)
    wider.activity.set(profile.undo.activity)
    wider.begin.set(profile.undo.begin)
    wider.end.set(profile.undo.end)
    profile.undo = wider
  }
  profile.undo.activity[entry] = activity
  profile.undo.begin[entry] = profile.begin[activity]!
  profile.undo.end[entry] = profile.end[activity]!
}

/** A cell in which the activity, running over `from` until before `until`, does not fit beside the sure parts of the others: the last such or the first; -1 = none. */
const blockedCell = (
  profile: Profile,
  activity: number,
  from: number,
  until: number,
  isLast: boolean,
): number => {
  const { uses, used, load, project } = profile
  const { capacities, demands } = project
  const resources = capacities.length
  const begin = profile.begin[activity]!
  const end = profile.end[activity]!
  const step = isLast ? -1 : 1
  const stopAt = isLast ? from - 1 : until
  const first = uses[activity]!
  const afterLast = uses[activity + 1]!
  for (let time = isLast ? until - 1 : from; time !== stopAt; time += step) {
    if (time >= begin && time < end) continue
    for (let at = first; at < afterLast; at++) {
      const resource = used[at]!
      const cell = time * resources + resource
      if (load[cell]! + demands[activity * resources + resource]! > capacities[resource]!) return cell
    }
  }
  return -1
}

/** Moves the bounds of an activity out of cells in which it does not fit. False on a clash. */
const fitActivity = (profile: Profile, bounds: Bounds, activity: number): boolean => {
  const { value } = bounds
  const lower = 2 * activity
  const takes = profile.project.durations[activity]!
  const resources = profile.project.capacities.length
  for (;;) {
    const start = value[lower]!
    const cell = blockedCell(profile, activity, start, start + takes, true)
    if (cell < 0) break
    const time = Math.floor(cell / resources)
    if (!raise(bounds, lower, time + 1, REASON.load, cell)) return false
  }
  for (;;) {
    const start = -value[lower + 1]!
    const cell = blockedCell(profile, activity, start, start + takes, false)
    if (cell < 0) return true
    const time = Math.floor(cell / resources)
    if (!raise(bounds, lower + 1, takes - time, REASON.load, cell)) return false
  }
}

/** Whether load grew where an activity may run, or it moved itself. `anyLow` and `anyHigh` span the growth of all resources: a quick no. */
const isConcerned = (
  profile: Profile,
  bounds: Bounds,
  activity: number,
  anyLow: number,
  anyHigh: number,
): boolean => {
  const earliest = bounds.value[2 * activity]!
  const latest = -bounds.value[2 * activity + 1]!
  if (earliest === latest) return false
  if (profile.isChanged[activity] === 1) return true
  const until = latest + profile.project.durations[activity]!
  if (anyLow >= until || anyHigh <= earliest) return false
  for (let at = profile.uses[activity]!; at < profile.uses[activity + 1]!; at++) {
    const resource = profile.used[at]!
    if (profile.low[resource]! < until && profile.high[resource]! > earliest) return true
  }
  return false
}

/**
 * Looks at all that changed: enters grown sure parts, then moves bounds of activities that do not fit beside them (timetable reasoning).
 * False on a clash: either `overfull` names a cell, or the bounds' own clash tells.
 */
export const lookAtLoad = (profile: Profile, bounds: Bounds): boolean => {
  if (profile.changedCount === 0) return true
  profile.low.fill(profile.horizon)
  profile.high.fill(0)
  profile.overfull = -1
  for (let at = 0; at < profile.changedCount; at++) {
    const cell = growPart(profile, bounds, profile.changed[at]!)
    if (cell < 0) continue
    profile.overfull = cell
    return false
  }
  const activities = profile.project.durations.length
  let anyLow = profile.horizon
  let anyHigh = 0
  for (let resource = 0; resource < profile.low.length; resource++) {
    anyLow = Math.min(anyLow, profile.low[resource]!)
    anyHigh = Math.max(anyHigh, profile.high[resource]!)
  }
  for (let activity = 0; activity < activities; activity++)
    if (isConcerned(profile, bounds, activity, anyLow, anyHigh) && !fitActivity(profile, bounds, activity))
      return false
  for (let at = 0; at < profile.changedCount; at++) profile.isChanged[profile.changed[at]!] = 0
  profile.changedCount = 0
  return true
}
