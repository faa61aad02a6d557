import { computed, signal } from '@preact/signals'
import * as v from 'valibot'
import type { RouteOutput } from '@swardwright/journal'
import type { EntryStore } from '../journal/entry-store.ts'
import { sendWaiting } from '../journal/send-waiting.ts'
import { callServer } from '../journal/server.ts'
import { sender, wordsOf } from './access.ts'
import { courseId } from './journal.ts'
import { keepText, keptJson } from './kept-text.ts'

const KEY = 'swardwright.courses'
const TRY_AGAIN_MS = 30_000

const keptSchema = v.array(v.object({ id: v.string(), name: v.string() }))

/** The courses that this device may see, as the server listed them last. */
export const courses = signal<RouteOutput<'courses'>>(keptJson(KEY, keptSchema) ?? [])

/** Courses whose diary this device has: they open without a line. */
export const coursesHere = signal<readonly string[]>([])

/** A course that a link asked for, and that this device does not see; null where none was. */
export const courseMissed = signal<string | null>(null)

/** What other courses than the open one have not sent yet. */
export const unsentElsewhere = signal<readonly { readonly course: string; readonly count: number }[]>([])

/** What a course is called; its id where no name is known here. */
export const courseName = (id: string): string => courses.value.find((one) => one.id === id)?.name ?? id

/** Whether there is anything to choose from. */
export const hasCourses = computed(() => courses.value.length > 1)

/** Keeps the list for when there is no line. */
export const keepCourses = (list: RouteOutput<'courses'>): void => {
  courses.value = list
  keepText(KEY, JSON.stringify(list))
}

/** Asks the server for its courses. Answers with what went wrong, or null. */
export const askCourses = async (): Promise<string | null> => {
  const answer = await callServer('courses', {})
  if (answer.ok) keepCourses(answer.value)
  return wordsOf(answer)
}

/** Sends what waits of other courses, now and every half minute until nothing does. */
export const sendOthers = async (store: EntryStore, device: string): Promise<void> => {
  const look = async (): Promise<void> => {
    unsentElsewhere.value = (await store.waiting()).filter(({ course }) => course !== courseId.value)
  }
  await look()
  coursesHere.value = await store.courses()
  for (const { course } of unsentElsewhere.value)
    await sendWaiting(course, {
      store,
      device,
      call: callServer,
      nowMs: Date.now,
      ...sender,
    })
  await look()
  if (unsentElsewhere.value.length > 0) setTimeout(() => void sendOthers(store, device), TRY_AGAIN_MS)
}
