import type { Entry, Refusal } from '@swardwright/journal'
import type { LinkState } from './sync.ts'

/** What the pages of one browser tell each other about a course. */
export type PageWord =
  | { readonly say: 'recorded'; readonly entry: Entry }
  | { readonly say: 'arrived'; readonly entries: readonly Entry[] }
  | { readonly say: 'left'; readonly sent: readonly string[]; readonly refused: readonly Refusal[] }
  | { readonly say: 'waiting'; readonly unsent: readonly string[] }
  | { readonly say: 'link'; readonly state: LinkState }
  /** A page that has just opened asks how things stand. */
  | { readonly say: 'hello' }

type Addressed = { readonly course: string; readonly word: PageWord }

/** Joins the pages of this browser that have a course open. Answers with what tells the others; null where the browser has no such line. */
export const joinPages = (
  course: string,
  onWord: (word: PageWord) => void,
): ((word: PageWord) => void) | null => {
  if (!('BroadcastChannel' in globalThis)) return null
  const channel = new BroadcastChannel('swardwright')
  channel.addEventListener('message', ({ data }: MessageEvent<Addressed>) => {
    if (data.course === course) onWord(data.word)
  })
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has no target; it never leaves this origin
  return (word) => channel.postMessage({ course, word } satisfies Addressed)
}
