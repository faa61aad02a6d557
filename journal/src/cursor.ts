/** A reader's place in a journal: the last entry read, by number and id. `null` is the beginning. */
export type Cursor = { readonly seq: number; readonly id: string }

/** The cursor of the beginning. */
export const CURSOR_START = '0'

/**
 * A cursor as text, such as `12.0198c5a0-...`. The id is in it so that a server which was put back from an older backup sees
 * that its number 12 is another entry than the reader's, and starts the reader again from the beginning.
 */
export const cursorText = (cursor: Cursor | null): string =>
  cursor === null ? CURSOR_START : `${cursor.seq}.${cursor.id}`

/** Reads a cursor; `undefined` when it is none. */
export const parseCursor = (text: string): Cursor | null | undefined => {
  if (text === CURSOR_START) return null
  const match = /^([1-9]\d{0,14})\.([0-9a-f-]{36})$/u.exec(text)
  return match?.[1] === undefined || match[2] === undefined
    ? undefined
    : { seq: Number(match[1]), id: match[2] }
}
