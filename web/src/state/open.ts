import { pictureDrawn } from '../parts/soon.ts'
import {
  SNAPSHOT_WORTH,
  initialState,
  latestByDevice,
  snapshotOf,
  stateOf,
  type Entry,
} from '@swardwright/journal'
import type { EntryStore, KeptJournal } from '../journal/entry-store.ts'
import { idbStore } from '../journal/idb-store.ts'
import { memoryStore } from '../journal/memory-store.ts'
import { callServer } from '../journal/server.ts'
import { askWho, wordsOf } from './access.ts'
import { askCourses, courseMissed, courses, keepCourses, sendOthers } from './courses.ts'
import { courseId, journal, keepsEntries, opening, refused, unsent } from './journal.ts'
import { readPhotos } from './photos.ts'
import { freshId, openDesk, takeIn } from './record.ts'
import { shareExchange } from './share.ts'
import { askToLast } from './storage.ts'

const openStore = async (): Promise<EntryStore> => {
  try {
    return await idbStore()
  } catch {
    // The page says so in words; the server still keeps what reaches it.
    keepsEntries.value = false
    return memoryStore()
  }
}

/** The course that the address names (`?course=ID`), taken off it once read. */
const takeAsked = (): string | null => {
  const url = new URL(location.href)
  const asked = url.searchParams.get('course')
  if (asked === null) return null
  url.searchParams.delete('course')
  history.replaceState(history.state, '', url)
  return asked
}

/** The course that a link asked for, where this device has it or the server lists it. */
const askedCourse = async (store: EntryStore): Promise<string | null> => {
  const asked = takeAsked()
  if (asked === null) return null
  if ((await store.courses()).includes(asked)) return asked
  await askCourses()
  if (courses.value.some(({ id }) => id === asked)) return asked
  courseMissed.value = asked
  return null
}

/** The course to open: what a link names, else what this device opened last, else the first that the server has. */
const chooseCourse = async (store: EntryStore): Promise<string | null> => {
  const last = (await askedCourse(store)) ?? (await store.course())
  if (last !== null) return last
  const answer = await callServer('courses', {})
  if (!answer.ok) {
    await askWho()
    opening.value = answer.why === 'refused' ? 'closed' : 'unreachable'
    return null
  }
  keepCourses(answer.value)
  const first = answer.value[0]
  if (first === undefined) opening.value = 'noCourse'
  return first?.id ?? null
}

/** What this device has, from its snapshot where it has one that this version can use. */
const openKept = async (
  store: EntryStore,
  course: string,
): Promise<{ readonly kept: KeptJournal; readonly latestMs: Readonly<Record<string, number>> }> => {
  const snapshot = await store.snapshot(course)
  const begun = snapshot === null ? null : stateOf(snapshot)
  journal.value = begun ?? initialState
  const kept = await store.load(course, begun?.before?.ids ?? new Set())
  return { kept, latestMs: begun === null ? {} : (snapshot?.latestMs ?? {}) }
}

/**
 * Keeps a snapshot once enough has come on top of the last. Only when nothing waits to be sent and nothing was refused: those entries
 * have to be at hand.
 */
const keepSnapshot = async (
  store: EntryStore,
  course: string,
  latestMs: Readonly<Record<string, number>>,
): Promise<void> => {
  const isQuiet = unsent.value.length === 0 && refused.value.length === 0
  if (!isQuiet || journal.value.entries.length < SNAPSHOT_WORTH) return
  const snapshot = snapshotOf(journal.value, latestMs)
  if (snapshot !== null) await store.keepSnapshot(course, snapshot)
}

const openCourse = async (store: EntryStore, course: string): Promise<void> => {
  const { kept, latestMs } = await openKept(store, course)
  const device = await store.device(() => `device ${freshId(Date.now()).slice(-8)}`)
  courseId.value = course
  let share: ((entry: Entry) => void) | null = null
  const keptEntry = (entry: Entry): void => {
    void askToLast()
    share?.(entry)
  }
  const desk = { store, device, kept: keptEntry, answered: pictureDrawn }
  openDesk(desk, null)
  takeIn(kept.entries)
  openDesk(desk, latestByDevice(journal.value, latestMs)[device] ?? null)
  unsent.value = kept.unsent
  refused.value = kept.refused
  if (journal.value.facts.course !== null) opening.value = 'open'
  await store.openCourse(course)
  readPhotos()
  share = shareExchange({ course, store, device }, () => keepSnapshot(store, course, latestMs))
  void sendOthers(store, device)
  void askCourses()
}

/** Opens the journal that this device or its server has; makes none up. */
export const openJournal = async (): Promise<void> => {
  const store = await openStore()
  const course = await chooseCourse(store)
  if (course !== null) await openCourse(store, course)
}

/** Makes a course on the server and opens it. Null when the server could not be reached. */
export const addCourse = async (name: string): Promise<string | null> => {
  const answer = await callServer('addCourse', { body: { name } })
  if (!answer.ok) return null
  await openCourse(await openStore(), answer.value.id)
  return answer.value.id
}

/** Turns to another course: the app begins anew with it, so that nothing of the one before is left on any page. */
export const turnToCourse = async (course: string): Promise<void> => {
  await (await openStore()).openCourse(course)
  location.assign('/')
}

/** Makes a further course, empty or as a copy of the demo, and turns to it. Answers with what went wrong, or null. */
export const beginCourse = async (name: string, from: 'nothing' | 'demo'): Promise<string | null> => {
  const answer = await callServer('addCourse', { body: { name, from } })
  if (answer.ok) {
    keepCourses([...courses.value, answer.value])
    await turnToCourse(answer.value.id)
  }
  return wordsOf(answer)
}

/** Leaves open which course comes next: a device that has just joined takes the one that it was let in to. */
export const forgetCourse = async (): Promise<void> => (await openStore()).openCourse(null)
