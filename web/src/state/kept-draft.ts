import { effect } from '@preact/signals'
import * as v from 'valibot'
import { planSchema } from '@swardwright/engine'
import { draft } from './plan.ts'

const KEY = 'swardwright.draft'

const keptSchema = v.object({
  plan: planSchema,
  rain: v.array(v.object({ start: v.string(), finish: v.string(), mmPerH: v.number() })),
})

/** Takes up the draft that this device made last, and keeps each new one. A draft that can't be read is made anew. */
export const keepDraft = (): void => {
  try {
    const text = localStorage.getItem(KEY)
    const kept = text === null ? null : v.safeParse(keptSchema, JSON.parse(text))
    if (kept?.success === true) draft.value = kept.output
  } catch {
    // No storage, or not JSON: a new draft is made in seconds.
  }
  effect(() => {
    const text = draft.value === null ? null : JSON.stringify(draft.value)
    try {
      if (text === null) localStorage.removeItem(KEY)
      else localStorage.setItem(KEY, text)
    } catch {
      // Without storage the draft lasts as long as the page.
    }
  })
}
