import { computed, signal } from '@preact/signals'
import { author } from './author.ts'
import { course } from './course.ts'
import { today } from './clock.ts'
import { keepText, keptText } from './kept-text.ts'

const POST_KEY = 'swardwright.post'
const READ_KEY = 'swardwright.briefed'

const chosen = signal<string | null>(keptText(POST_KEY))

/** The person whose post this device shows: chosen once, else whoever in the crew bears the name that records here; null until somebody chooses. */
export const postOf = computed((): string | null => {
  const people = course.value?.people ?? []
  if (people.some(({ id }) => id === chosen.value)) return chosen.value
  return people.find(({ name }) => name === author.value)?.id ?? null
})

/** Chooses whose post this device shows; null asks again. */
export const choosePost = (person: string | null): void => {
  chosen.value = person ?? ''
  keepText(POST_KEY, person ?? '')
}

const readOn = signal<string | null>(keptText(READ_KEY))

const briefing = (): string => `${postOf.value ?? ''} ${today.value}`

/** Whether the cautions were read at this post today. */
export const isBriefed = computed(() => readOn.value === briefing())

/** Keeps that the cautions were read. It stays on this device: nobody is checked. */
export const setBriefed = (): void => {
  readOn.value = briefing()
  keepText(READ_KEY, briefing())
}

/** Shows the cautions again. */
export const forgetBriefing = (): void => {
  readOn.value = null
}
