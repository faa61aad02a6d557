import { batch, signal, type ReadonlySignal } from '@preact/signals'

/** An answer that follows its questions: while a newer one is worked out, the last stays and `pending` says so. */
export type Latest<T> = {
  readonly value: ReadonlySignal<T | null>
  readonly pending: ReadonlySignal<boolean>
  /** A fault of the program, in its own words; null while all is well. */
  readonly fault: ReadonlySignal<string | null>
  /** Asks anew. Of several questions on their way only the answer to the last is taken. */
  readonly ask: (answer: () => Promise<T>) => void
  readonly clear: () => void
}

/** Makes a place for an answer that follows its questions. */
export const latest = <T>(): Latest<T> => {
  const value = signal<T | null>(null)
  const pending = signal(false)
  const fault = signal<string | null>(null)
  let asked = 0

  const settle = (question: number, change: () => void): void => {
    if (question !== asked) return
    batch(() => {
      pending.value = false
      change()
    })
  }

  return {
    value,
    pending,
    fault,
    ask: (answer) => {
      asked += 1
      const question = asked
      pending.value = true
      answer().then(
        (output) =>
          settle(question, () => {
            value.value = output
            fault.value = null
          }),
        (error: unknown) =>
          settle(question, () => {
            fault.value = error instanceof Error ? error.message : String(error)
          }),
      )
    },
    clear: () => {
      asked += 1
      batch(() => {
        pending.value = false
        value.value = null
      })
    },
  }
}
