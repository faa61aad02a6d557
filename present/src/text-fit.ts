/**
 * Width of a character as a share of the type size, on the safe side for the face of this product. Measured by eye on Atkinson
 * Hyperlegible Next at weight 400 (capitals and 'm' are wider, 'i' is narrower); drawings have no ruler for text, so they reckon.
 */
const CHARACTER_SHARE = 0.56

/** About how wide a text is, px. */
export const textWidthPx = (text: string, fontPx: number): number => text.length * fontPx * CHARACTER_SHARE

/** The text, or as much of it as fits with an ellipsis. */
export const fittedText = (text: string, fontPx: number, roomPx: number): string => {
  if (textWidthPx(text, fontPx) <= roomPx) return text
  const characters = Math.max(1, Math.floor(roomPx / (fontPx * CHARACTER_SHARE)) - 1)
  return `${text.slice(0, characters).trimEnd()}\u2026`
}
