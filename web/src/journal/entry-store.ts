import type { Entry, Refusal } from '@swardwright/journal'

/** What this device has of one course's journal. */
export type KeptJournal = {
  readonly entries: readonly Entry[]
  /** Ids of entries that the server does not have yet, in the order in which they were made. */
  readonly unsent: readonly string[]
  readonly refused: readonly Refusal[]
  /** Where the next pull begins; null when nothing was pulled yet. */
  readonly cursor: string | null
}

/** What a pull or a push changes, all at once. */
export type SyncStep = {
  readonly pulled?: readonly Entry[]
  readonly sent?: readonly string[]
  readonly refused?: readonly Refusal[]
  readonly cursor?: string
  /** Puts every kept entry in the queue again: the server was put back from an older backup. */
  readonly sendAllAgain?: boolean
}

/** Where a device keeps its entries. An entry that `add` has resolved for survives the device being switched off. */
export type EntryStore = {
  load(course: string): Promise<KeptJournal>
  /** Keeps an entry and its place in the queue to the server, both or neither. */
  add(entry: Entry): Promise<void>
  apply(course: string, step: SyncStep): Promise<void>
  /** A random name that this device keeps. */
  device(make: () => string): Promise<string>
  /** Which course this device opened last. */
  course(): Promise<string | null>
  openCourse(course: string): Promise<void>
}
