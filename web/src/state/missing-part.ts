import { signal } from '@preact/signals'
import { carryTyped } from './carry-typed.ts'

/** Whether a part of the engine could not be fetched, so that some answers don't come. */
export const isPartMissing = signal(false)

const serverAnswers = (): Promise<boolean> =>
  fetch('/index.html', { cache: 'no-store' }).then(
    ({ ok }) => ok,
    () => false,
  )

/**
 * Loads the app anew, which helps where a newer version on the server has taken the place of the parts that this page asks for. What is half
 * typed is carried over. False where the server does not answer: to load anew would then leave the person with nothing.
 */
export const loadAnew = async (): Promise<boolean> => {
  if (!(await serverAnswers())) return false
  carryTyped()
  location.reload()
  return true
}
