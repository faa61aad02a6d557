import { signal } from '@preact/signals'
import { keepText, keptText } from './kept-text.ts'

const KEY = 'swardwright.author'

/** Who records from this device. */
export const author = signal('Course manager')

/** True once the server knows who records here: then the name is not for typing. */
export const authorIsTied = signal(false)

/** Takes up the name under which the server knows this device. */
export const tieAuthor = (name: string): void => {
  setAuthor(name)
  authorIsTied.value = true
}

/** Takes up the name kept on this device. */
export const restoreAuthor = (): void => {
  const name = keptText(KEY)
  if (name !== null && name !== '') author.value = name
}

/** Changes the name that stands beside what this device records; an empty name changes nothing. */
export const setAuthor = (name: string): void => {
  const trimmed = name.trim().slice(0, 120)
  if (trimmed === '') return
  author.value = trimmed
  keepText(KEY, trimmed)
}
