import {
  ENTRIES_MAX,
  fold,
  initialState,
  type Cursor,
  type Facts,
  type JournalState,
} from '@swardwright/journal'
import { isHere, placeOf } from './storage/place.ts'
import type { JournalStore } from './storage/storage.ts'

/** Courses whose journal is kept folded in memory, at most. */
const COURSES_MAX = 20

/** Reads what the journal of a course says. Lives as long as the server. */
export type JournalReader = { readonly factsOf: (course: string) => Promise<Facts> }

type Read = { readonly state: JournalState; readonly end: Cursor | null }

/** Folds what came since the last reading on top of it; from the beginning where the journal is another one by now (rule J28). */
const readOn = async (journal: JournalStore, course: string, before: Read | undefined): Promise<Read> => {
  const isGood = before?.end != null && (await isHere(journal, course, before.end))
  let { state, end }: Read = isGood ? before : { state: initialState, end: null }
  for (;;) {
    const page = await journal.page(course, end?.seq ?? 0, ENTRIES_MAX)
    const last = page.at(-1)
    if (last === undefined) return { state, end }
    state = fold(
      state,
      page.map(({ entry }) => entry),
    )
    end = placeOf(last)
  }
}

/** Makes a reader that remembers the courses asked for last. */
export const journalReader = (journal: JournalStore): JournalReader => {
  const known = new Map<string, Promise<Read>>()
  return {
    factsOf: async (course) => {
      const before = known.get(course)
      // One reading at a time a course: each waits for the one before it and goes on from there.
      const reading = (before ?? Promise.resolve(undefined))
        .catch(() => undefined)
        .then((read) => readOn(journal, course, read))
      known.delete(course)
      known.set(course, reading)
      const [oldest] = known.keys()
      if (known.size > COURSES_MAX && oldest !== undefined) known.delete(oldest)
      return (await reading).state.facts
    },
  }
}
