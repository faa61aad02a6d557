import { signal } from '@preact/signals'
import * as v from 'valibot'
import type { RouteOutput } from '@swardwright/journal'
import { callServer } from '../journal/server.ts'
import { wordsOf } from './access.ts'
import { courseId } from './journal.ts'
import { keepText, keptJson } from './kept-text.ts'

/** Whether the course has a members’ page; undefined before the server has answered. */
export const membersPageNow = signal<RouteOutput<'membersPage'>['page'] | undefined>(undefined)

const keptSchema = v.object({ id: v.string(), key: v.string() })

const keyOf = (course: string): string => `swardwright.members ${course}`

/** The server keeps a hash only, so the device that opened the page remembers the address. */
const remember = (course: string, kept: v.InferOutput<typeof keptSchema>): void => {
  lastKept.value = kept
  keepText(keyOf(course), JSON.stringify(kept))
}

/** Known until the page is closed, also without storage. */
const lastKept = signal<v.InferOutput<typeof keptSchema> | null>(null)

/** The address of the page that is open now; null where this device does not know it. */
export const membersAddress = (): string | null => {
  const [course, page] = [courseId.value, membersPageNow.value]
  if (course === null || page == null) return null
  const kept = keptJson(keyOf(course), keptSchema) ?? lastKept.value
  return kept?.id === page.id ? `${location.origin}/greens/${kept.key}` : null
}

/** Asks the server whether there is a page. Answers with what went wrong, or null. */
export const askMembersPage = async (): Promise<string | null> => {
  const course = courseId.value
  if (course === null) return null
  const answer = await callServer('membersPage', { params: { course } })
  if (answer.ok) membersPageNow.value = answer.value.page
  return wordsOf(answer)
}

/** Opens the page at a new address. Answers with what went wrong, or null. */
export const openMembersPage = async (): Promise<string | null> => {
  const course = courseId.value
  if (course === null) return null
  const answer = await callServer('openMembersPage', { params: { course } })
  if (answer.ok) {
    const { id, key, since } = answer.value
    remember(course, { id, key })
    membersPageNow.value = { id, since }
  }
  return wordsOf(answer)
}

/** Closes the page. Answers with what went wrong, or null. */
export const closeMembersPage = async (): Promise<string | null> => {
  const course = courseId.value
  if (course === null) return null
  const answer = await callServer('closeMembersPage', { params: { course } })
  if (answer.ok) membersPageNow.value = null
  return wordsOf(answer)
}
