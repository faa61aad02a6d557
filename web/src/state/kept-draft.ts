import { effect } from '@preact/signals'
import * as v from 'valibot'
import { planSchema } from '@swardwright/engine'
import { courseId } from './journal.ts'
import { draft, type PlannedFor } from './plan.ts'

const KEY = 'swardwright.draft'

const keptSchema = v.object({
  plan: planSchema,
  rain: v.array(v.object({ start: v.string(), finish: v.string(), mmPerH: v.number() })),
})

const read = (key: string): PlannedFor | null => {
  try {
    const text = localStorage.getItem(key)
    const kept = text === null ? null : v.safeParse(keptSchema, JSON.parse(text))
    return kept?.success === true ? kept.output : null
  } catch {
    // No storage, or not JSON: a new draft is made in seconds.
    return null
  }
}

/** Takes up the draft that this device made last for the course that is opened, and keeps each new one. A draft that can't be read is made anew. */
export const keepDraft = (): void => {
  let takenUp: string | null = null
  effect(() => {
    const course = courseId.value
    if (course === null) return
    const key = `${KEY} ${course}`
    if (takenUp !== course) {
      takenUp = course
      draft.value = read(key)
    }
    const text = draft.value === null ? null : JSON.stringify(draft.value)
    try {
      if (text === null) localStorage.removeItem(key)
      else localStorage.setItem(key, text)
    } catch {
      // Without storage the draft lasts as long as the page.
    }
  })
}
