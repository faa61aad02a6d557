import type { Entry, Refusal, Snapshot } from '@swardwright/journal'

/** What this device has of one course's journal. */
export type KeptJournal = {
  readonly entries: readonly Entry[]
  /** Ids of entries that the server does not have yet, in the order in which they were made. */
  readonly unsent: readonly string[]
  readonly refused: readonly Refusal[]
  /** Where the next pull begins; null when nothing was pulled yet. */
  readonly cursor: string | null
  /** The furthest cursor that the server has told, so that it says when it has lost what lies before; null when it told none. */
  readonly seen: string | null
}

/** What a pull or a push changes, all at once. */
export type SyncStep = {
  readonly pulled?: readonly Entry[]
  readonly sent?: readonly string[]
  readonly refused?: readonly Refusal[]
  readonly cursor?: string
  readonly seen?: string
  /**
   * Puts kept entries in the queue again, all or those of one author: the server was put back from an older backup. Only those who decide
   * may hand on what others wrote.
   */
  readonly sendAgain?: { readonly of: 'all' } | { readonly of: 'author'; readonly author: string }
}

/** Where a device keeps its entries. An entry that `add` has resolved for survives the device being switched off. */
export type EntryStore = {
  /** What is kept, without the entries that a snapshot stands for. */
  load(course: string, without: ReadonlySet<string>): Promise<KeptJournal>
  /** The snapshot kept last; null where there is none. Whether it can be used is for the journal to say. */
  snapshot(course: string): Promise<Snapshot | null>
  keepSnapshot(course: string, snapshot: Snapshot): Promise<void>
  /** Keeps an entry and its place in the queue to the server, both or neither. */
  add(entry: Entry): Promise<void>
  apply(course: string, step: SyncStep): Promise<void>
  /** A random name that this device keeps. */
  device(make: () => string): Promise<string>
  /** Which course this device opened last. */
  course(): Promise<string | null>
  /** Keeps which course is open; null where the next start is to choose anew. */
  openCourse(course: string | null): Promise<void>
  /** The courses that have entries here. */
  courses(): Promise<readonly string[]>
  /** How many entries of each course wait to be sent, of those that have any. */
  waiting(): Promise<readonly { readonly course: string; readonly count: number }[]>
}

/** How often each course stands in a list. */
export const countByCourse = (
  queued: readonly { readonly course: string }[],
): readonly { readonly course: string; readonly count: number }[] => {
  const counts = new Map<string, number>()
  for (const { course } of queued) counts.set(course, (counts.get(course) ?? 0) + 1)
  return [...counts].map(([course, count]) => ({ course, count }))
}

/** Whether a step puts this entry in the queue again. */
export const isSentAgain = (entry: Entry, again: NonNullable<SyncStep['sendAgain']>): boolean =>
  again.of === 'all' || entry.author === again.author
