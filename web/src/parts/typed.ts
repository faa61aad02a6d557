import { useEffect, useRef, useState } from 'preact/hooks'

/** What stands in a field, and what becomes of it. */
export type Typed = {
  readonly text: string
  /** Whether something was typed since the field was last left. */
  readonly isTyping: () => boolean
  /** Takes a key press. */
  readonly type: (text: string) => void
  /** Hands the text on, unless the record has it already. */
  readonly handOn: (text: string, give: () => void) => void
  /** The field was left with a text that will do: from here on it follows the record again. */
  readonly leave: () => void
}

/**
 * The text of a field whose value can change under the hand: another phone's entry comes in, or one's own comes back from the store only
 * after the next was typed. What is being typed is never put back; what was handed on stays until the record has it; and a field that
 * was only looked into follows the record and hands nothing on.
 */
export const useTyped = (shown: string): Typed => {
  const [text, setText] = useState(shown)
  const isTyping = useRef(false)
  /** Handed on while it was typed this time. */
  const handed = useRef<string | null>(null)
  /** Handed on and not yet come back, oldest first. */
  const awaited = useRef<readonly string[]>([])

  useEffect(() => {
    const at = awaited.current.lastIndexOf(shown)
    awaited.current = at === -1 ? [] : awaited.current.slice(at + 1)
    if (!isTyping.current && awaited.current.length === 0) setText(shown)
  }, [shown])

  return {
    text,
    isTyping: () => isTyping.current,
    type: (typed) => {
      isTyping.current = true
      setText(typed)
    },
    handOn: (typed, give) => {
      const isKnown =
        handed.current === null ? awaited.current.length === 0 && typed === shown : typed === handed.current
      if (isKnown) return
      handed.current = typed
      awaited.current = [...awaited.current, typed]
      give()
    },
    leave: () => {
      isTyping.current = false
      handed.current = null
      if (awaited.current.length === 0) setText(shown)
    },
  }
}

/** Runs what was given last when the field goes from the page: a page can be left by the browser’s own button, without leaving the field. */
export const useWhenGone = (run: () => void): void => {
  const last = useRef(run)
  last.current = run
  useEffect(() => () => last.current(), [])
}
