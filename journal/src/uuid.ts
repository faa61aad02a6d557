import * as v from 'valibot'
import { assert } from './assert.ts'

/** Bytes of chance that an id needs. */
export const UUID_RANDOM_BYTES = 10

/** The id of an entry: a UUID of version 7 (RFC 9562, section 5.7) in lower case. */
export const entryId = v.pipe(
  v.string(),
  v.regex(
    /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/u,
    'a UUID of version 7 in lower case',
  ),
)

/** What an id is made of. */
export type UuidSource = {
  /** The device's clock, whole epoch milliseconds, 0 to 2^48 - 1. */
  readonly nowMs: number
  /** At least 10 bytes from a good source of chance (`crypto.getRandomValues`); only the first 10 are read. */
  readonly random: Uint8Array
}

const hex = (byte: number): string => byte.toString(16).padStart(2, '0')

/**
 * A UUID of version 7: 48 bits of milliseconds, then chance (RFC 9562, section 5.7).
 * Pure, since `crypto.randomUUID` is missing over plain http; the caller brings clock and chance.
 * Throws when the clock is no whole millisecond in range or there are too few bytes: both are bugs of the caller.
 */
export const uuidV7 = ({ nowMs, random }: UuidSource): string => {
  assert(Number.isInteger(nowMs) && nowMs >= 0 && nowMs < 2 ** 48, 'an id needs whole epoch milliseconds')
  assert(random.length >= UUID_RANDOM_BYTES, `an id needs ${UUID_RANDOM_BYTES} random bytes`)
  const chance = (index: number): number => random[index] ?? 0
  const bytes = [
    ...nowMs
      .toString(16)
      .padStart(12, '0')
      .match(/../gu)!
      .map((pair) => Number.parseInt(pair, 16)),
    0x70 | (chance(0) & 0x0f),
    chance(1),
    0x80 | (chance(2) & 0x3f),
    ...Array.from({ length: 7 }, (_, index) => chance(index + 3)),
  ]
  const text = bytes.map(hex).join('')
  return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join(
    '-',
  )
}
