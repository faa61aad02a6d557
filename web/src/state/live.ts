import { requestFor } from '@swardwright/journal'

/** Listens for word that entries came in. The browser itself tries again when the line breaks. */
export const listenLive = (course: string, onEntries: () => void): void => {
  const stream = new EventSource(requestFor('live', { params: { course } }).url)
  stream.addEventListener('entries', onEntries)
  // A line that is back may have missed something.
  stream.addEventListener('open', onEntries)
}
