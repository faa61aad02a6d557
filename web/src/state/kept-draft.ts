import { effect } from '@preact/signals'
import * as v from 'valibot'
import { planSchema } from '@swardwright/engine'
import { courseId } from './journal.ts'
import { keepText, keptJson } from './kept-text.ts'
import { draft } from './plan.ts'

const KEY = 'swardwright.draft'

const keptSchema = v.object({
  plan: planSchema,
  rain: v.array(v.object({ start: v.string(), finish: v.string(), mmPerH: v.number() })),
})

/** Takes up the draft that this device made last for the course that is opened, and keeps each new one. A draft that can't be read is made anew. */
export const keepDraft = (): void => {
  let takenUp: string | null = null
  effect(() => {
    const course = courseId.value
    if (course === null) return
    const key = `${KEY} ${course}`
    if (takenUp !== course) {
      takenUp = course
      draft.value = keptJson(key, keptSchema)
    }
    keepText(key, draft.value === null ? null : JSON.stringify(draft.value))
  })
}
