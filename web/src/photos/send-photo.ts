/** The part of a file that a request carries; `to` is not included. */
export type Part = { readonly from: number; readonly to: number }

/** What the server said to a part of a photo, or to the question how much of it is there. */
export type PutAnswer =
  | { readonly got: 'part'; readonly received: number; readonly whole: boolean }
  /** The part begins elsewhere than the file ends there. */
  | { readonly got: 'elsewhere'; readonly received: number }
  /** What came has another hash; the server has dropped it. */
  | { readonly got: 'differs' }
  | { readonly got: 'away' }
  /** `words`: why, as a sentence for people. */
  | { readonly got: 'refused'; readonly words: string }

/** Sends a part of one photo; null asks how much is there. */
export type PutPart = (part: Part | null) => Promise<PutAnswer>

/** How sending a photo ended. */
export type Sent =
  | { readonly end: 'sent' }
  | { readonly end: 'away' }
  | { readonly end: 'differs' }
  | { readonly end: 'refused'; readonly words: string }

/** As much goes in one request: what a broken line costs at most, and what the server keeps at once. */
export const PART_BYTES = 256 * 1024

/**
 * Sends a photo from where the server’s copy ends. The server is asked first, so a photo that another device has sent, or this one before
 * the line broke, is not sent again.
 */
export const sendPhoto = async (length: number, put: PutPart): Promise<Sent> => {
  let answer = await put(null)
  for (let reached = -1; ;) {
    if (answer.got === 'differs') return { end: 'differs' }
    if (answer.got === 'away') return { end: 'away' }
    if (answer.got === 'refused') return { end: 'refused', words: answer.words }
    if (answer.got === 'part' && answer.whole) return { end: 'sent' }
    const { received } = answer
    // An answer that moves nothing on would be asked for ever.
    if (received <= reached || received >= length) return { end: 'away' }
    reached = received
    answer = await put({ from: received, to: Math.min(length, received + PART_BYTES) })
  }
}
