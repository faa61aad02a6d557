import type { Entry, Refusal } from '@swardwright/journal'
import { countByCourse, isSentAgain, type EntryStore } from './entry-store.ts'

/** Keeps entries only while the page is open: for a browser that refuses its database, which the page then says, and for tests. */
export const memoryStore = (): EntryStore => {
  const entries = new Map<string, Entry>()
  const outbox: Entry[] = []
  const refused: { readonly course: string; readonly refusal: Refusal }[] = []
  const cursors = new Map<string, string>()
  const seen = new Map<string, string>()
  let name: string | null = null
  let opened: string | null = null

  const leave = (id: string) => {
    const at = outbox.findIndex((entry) => entry.id === id)
    if (at !== -1) outbox.splice(at, 1)
  }

  return {
    load: (course) =>
      Promise.resolve({
        entries: [...entries.values()].filter((entry) => entry.course === course),
        unsent: outbox.filter((entry) => entry.course === course).map((entry) => entry.id),
        refused: refused.filter((one) => one.course === course).map((one) => one.refusal),
        cursor: cursors.get(course) ?? null,
        seen: seen.get(course) ?? null,
      }),
    add: (entry) => {
      entries.set(entry.id, entry)
      outbox.push(entry)
      return Promise.resolve()
    },
    apply: (course, step) => {
      const { sendAgain } = step
      if (sendAgain !== undefined) {
        const others = outbox.filter((entry) => entry.course !== course)
        const again = [...entries.values()].filter(
          (entry) => entry.course === course && isSentAgain(entry, sendAgain),
        )
        outbox.splice(0, outbox.length, ...others, ...again)
      }
      for (const entry of step.pulled ?? []) entries.set(entry.id, entry)
      for (const id of step.sent ?? []) leave(id)
      for (const refusal of step.refused ?? []) {
        leave(refusal.id)
        refused.push({ course, refusal })
      }
      if (step.cursor !== undefined) cursors.set(course, step.cursor)
      if (step.seen !== undefined) seen.set(course, step.seen)
      return Promise.resolve()
    },
    // Entries last no longer than the page here, so there is nothing to start from.
    snapshot: () => Promise.resolve(null),
    keepSnapshot: () => Promise.resolve(),
    device: (make) => Promise.resolve((name ??= make())),
    course: () => Promise.resolve(opened),
    openCourse: (course) => {
      opened = course
      return Promise.resolve()
    },
    courses: () => Promise.resolve([...new Set([...entries.values()].map(({ course }) => course))]),
    waiting: () => Promise.resolve(countByCourse(outbox)),
  }
}
