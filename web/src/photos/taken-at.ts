/** The part of a file in which a camera’s notes stand. */
export const HEAD_BYTES = 128 * 1024

const EXIF_IFD = 0x8769
const DATE_TIME_ORIGINAL = 0x9003
const OFFSET_TIME_ORIGINAL = 0x9011

/** Where the TIFF block of a JPEG begins: behind `Exif` in a segment APP1 (Exif 2.32, 4.5.4 and 4.7.2); null where there is none. */
const tiffStart = (view: DataView): number | null => {
  if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return null
  for (let at = 2; at + 10 < view.byteLength; at += 2 + view.getUint16(at + 2)) {
    const marker = view.getUint16(at)
    if (marker === 0xffe1 && view.getUint32(at + 4) === 0x45786966) return at + 10
    // The picture itself begins: no notes any more.
    if (marker === 0xffda || (marker & 0xff00) !== 0xff00) return null
  }
  return null
}

/** A field of a directory: twelve bytes, of which the last four hold its value or say where that is (TIFF 6.0, section 2). */
const fieldAt = (
  view: DataView,
  directory: number,
  { tag, isLittle }: { readonly tag: number; readonly isLittle: boolean },
): { readonly length: number; readonly value: number } | null => {
  const count = view.getUint16(directory, isLittle)
  for (let n = 0; n < count; n += 1) {
    const at = directory + 2 + 12 * n
    if (view.getUint16(at, isLittle) === tag)
      return { length: view.getUint32(at + 4, isLittle), value: view.getUint32(at + 8, isLittle) }
  }
  return null
}

const textAt = (view: DataView, from: number, length: number): string =>
  String.fromCodePoint(
    ...Array.from({ length: Math.min(length, 32) }, (_, n) => view.getUint8(from + n)),
  ).replace(/\0.*$/u, '')

const read = (view: DataView): string | null => {
  const start = tiffStart(view)
  if (start === null) return null
  const isLittle = view.getUint16(start) === 0x4949
  const textOf = (directory: number, tag: number): string | null => {
    const field = fieldAt(view, directory, { tag, isLittle })
    // Texts of up to four characters stand in the field itself; neither of ours is as short.
    return field === null || field.length <= 4 ? null : textAt(view, start + field.value, field.length)
  }
  const exif = fieldAt(view, start + view.getUint32(start + 4, isLittle), { tag: EXIF_IFD, isLittle })
  if (exif === null) return null
  const date = textOf(start + exif.value, DATE_TIME_ORIGINAL)
  const match = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)$/u.exec(date ?? '')
  if (match === null) return null
  const offset = textOf(start + exif.value, OFFSET_TIME_ORIGINAL) ?? ''
  return `${match[1]}-${match[2]}-${match[3]}T${match[4]}${/^[+-]\d\d:\d\d$/u.test(offset) ? offset : ''}`
}

/**
 * When a JPEG was taken, as its camera wrote it: ISO 8601, without an offset where the camera gave none. Null where it says nothing that can
 * be read. Exif 2.32 (JEITA CP-3451 / CIPA DC-008), tags DateTimeOriginal and OffsetTimeOriginal.
 */
export const takenAt = (head: Uint8Array): string | null => {
  try {
    return read(new DataView(head.buffer, head.byteOffset, head.byteLength))
  } catch (error) {
    // A block that points out of itself.
    if (error instanceof RangeError) return null
    throw error
  }
}
