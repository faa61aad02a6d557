import type { Facts } from './facts.ts'
import { endOf, type JournalState, type Place } from './fold.ts'
import type { Strike } from './strikes.ts'

/**
 * Version of what a fold makes of entries. A change of facts, of a kind or of the fold itself is a new number, and every snapshot of
 * another number is thrown away.
 * 1: first. 2: headings driven. 3: more kinds of problem. 4: what golfers may play. 5: photos name their step and problem. 6: tokens
 * told. 7: tines that are short.
 */
export const FOLD_VERSION = 7

/** Entries that a state should have at least before a snapshot saves more time than it takes to keep. */
export const SNAPSHOT_WORTH = 1000

/** A state to be kept, without the bodies of its entries: plain data, as a browser's database takes it. */
export type Snapshot = {
  readonly foldVersion: number
  readonly ids: readonly string[]
  readonly end: Place
  readonly struck: readonly (readonly [string, Strike])[]
  readonly facts: Facts
  /** The latest moment of each device's entries, epoch milliseconds. */
  readonly latestMs: Readonly<Record<string, number>>
}

/** The latest moment of each device among the entries at hand, on top of what was known before. */
export const latestByDevice = (
  state: JournalState,
  before: Readonly<Record<string, number>> = {},
): Readonly<Record<string, number>> => {
  const latest = new Map(Object.entries(before))
  for (const { entry, atMs } of state.entries)
    latest.set(entry.device, Math.max(latest.get(entry.device) ?? atMs, atMs))
  return Object.fromEntries(latest)
}

/** A snapshot of a state; null where there is nothing in it. `latestMs` is that of the snapshot it stands on. */
export const snapshotOf = (
  state: JournalState,
  latestMs: Readonly<Record<string, number>> = {},
): Snapshot | null => {
  const end = endOf(state)
  if (end === null) return null
  return {
    foldVersion: FOLD_VERSION,
    ids: [...(state.before?.ids ?? []), ...state.entries.map((read) => read.entry.id)],
    end,
    struck: [...state.struck],
    facts: state.facts,
    latestMs: latestByDevice(state, latestMs),
  }
}

/** The state that a snapshot stands for; null where another version of the fold has made it. */
export const stateOf = (snapshot: Snapshot): JournalState | null =>
  snapshot.foldVersion === FOLD_VERSION
    ? {
        entries: [],
        before: { ids: new Set(snapshot.ids), end: snapshot.end },
        struck: new Map(snapshot.struck),
        facts: snapshot.facts,
      }
    : null
