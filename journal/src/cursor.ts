/**
 * A reader's place in a journal: the last entry read, by number and id, and when the server took it in, epoch milliseconds (null in cursors
 * of older servers, which did not tell). `null` is the beginning.
 */
export type Cursor = { readonly seq: number; readonly id: string; readonly receivedMs: number | null }

/** The cursor of the beginning. */
export const CURSOR_START = '0'

/**
 * A cursor as text, such as `12.0198c5a0-....1786341600000`. The id is in it so that a server which was put back from an older backup sees
 * that its number 12 is another entry than the reader's, and starts the reader again from the beginning. The moment is in it since the
 * same entry can come to lie under its old number again when it is sent anew, behind others than before.
 */
export const cursorText = (cursor: Cursor | null): string =>
  cursor === null
    ? CURSOR_START
    : `${cursor.seq}.${cursor.id}${cursor.receivedMs === null ? '' : `.${cursor.receivedMs}`}`

/** Reads a cursor; `undefined` when it is none. */
export const parseCursor = (text: string): Cursor | null | undefined => {
  if (text === CURSOR_START) return null
  const match = /^([1-9]\d{0,14})\.([0-9a-f-]{36})(?:\.(\d{1,15}))?$/u.exec(text)
  return match?.[1] === undefined || match[2] === undefined
    ? undefined
    : { seq: Number(match[1]), id: match[2], receivedMs: match[3] === undefined ? null : Number(match[3]) }
}
