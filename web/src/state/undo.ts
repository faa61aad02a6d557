import { signal } from '@preact/signals'
import type { BodyOf, KindName } from '@swardwright/journal'
import { record } from './record.ts'

/** What was recorded last by one touch, and can be taken back by another. */
export const lastTouch = signal<{
  readonly entries: readonly string[]
  readonly words: string
  /** Gives back what was typed for it. */
  readonly giveBack?: () => void
} | null>(null)

/** Records by one touch; `words` tell what was written down. */
export const touch = async <K extends KindName>(
  kind: K,
  body: BodyOf<K>,
  words: string,
  atMs?: number,
): Promise<void> => {
  const entry = await record(kind, body, atMs)
  lastTouch.value = { entries: [entry], words }
}

/** Strikes what was recorded last; it stays readable in the journal. */
export const undoTouch = async (): Promise<void> => {
  const last = lastTouch.value
  if (last === null) return
  lastTouch.value = null
  last.giveBack?.()
  for (const entry of last.entries) await record('struck', { entry, reason: `Taken back: ${last.words}` })
}
