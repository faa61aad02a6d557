import { describe, expect, it } from 'vitest'
import { takenAt } from './taken-at.ts'

const bytesOf = (text: string): readonly number[] => Array.from(text, (letter) => letter.charCodeAt(0))

type Order = 'II' | 'MM'

const number = (value: number, bytes: 2 | 4, order: Order): readonly number[] => {
  const big = Array.from({ length: bytes }, (_, n) => (value >>> (8 * (bytes - 1 - n))) & 255)
  return order === 'MM' ? big : big.toReversed()
}

/**
 * A JPEG’s head with camera’s notes, laid out by hand after TIFF 6.0, section 2, and Exif 2.32, 4.6: header of 8 bytes, first directory with
 * one field that points to the Exif directory at 26, that one with date and, if given, offset; their texts behind it.
 */
const jpegHead = (order: Order, date: string, offset?: string): Uint8Array => {
  const field = (tag: number, type: number, length: number, value: number) => [
    ...number(tag, 2, order),
    ...number(type, 2, order),
    ...number(length, 4, order),
    ...number(value, 4, order),
  ]
  const fields = offset === undefined ? 1 : 2
  const texts = 26 + 2 + 12 * fields + 4
  const tiff = [
    ...bytesOf(order),
    ...number(42, 2, order),
    ...number(8, 4, order),
    ...number(1, 2, order),
    ...field(0x8769, 4, 1, 26),
    ...number(0, 4, order),
    ...number(fields, 2, order),
    ...field(0x9003, 2, 20, texts),
    ...(offset === undefined ? [] : field(0x9011, 2, 7, texts + 20)),
    ...number(0, 4, order),
    ...bytesOf(`${date}\0`),
    ...bytesOf(offset === undefined ? '' : `${offset}\0`),
  ]
  const segment = [...bytesOf('Exif\0\0'), ...tiff]
  // A JFIF segment before it, as many programs write one.
  const jfif = [0xff, 0xe0, 0, 16, ...bytesOf('JFIF\0'), 1, 1, 0, 0, 1, 0, 1, 0, 0]
  return Uint8Array.from([
    0xff,
    0xd8,
    ...jfif,
    0xff,
    0xe1,
    ...number(segment.length + 2, 2, 'MM'),
    ...segment,
    0xff,
    0xda,
    0,
    2,
  ])
}

describe('when a picture was taken', () => {
  it('is read in either order of bytes, with the camera’s offset where it gave one', () => {
    expect(takenAt(jpegHead('MM', '2026:08:11 06:30:05', '+01:00'))).toBe('2026-08-11T06:30:05+01:00')
    expect(takenAt(jpegHead('II', '2026:08:11 06:30:05'))).toBe('2026-08-11T06:30:05')
  })

  it('is not known where the camera left it empty, where the head is cut off, and where there is no JPEG', () => {
    expect(takenAt(jpegHead('II', '    :  :     :  :  '))).toBeNull()
    const whole = jpegHead('MM', '2026:08:11 06:30:05')
    for (let length = 0; length < whole.length - 5; length += 1)
      expect(takenAt(whole.subarray(0, length))).toBeNull()
    expect(takenAt(Uint8Array.from(bytesOf('\u0089PNG, and then something')))).toBeNull()
  })
})
