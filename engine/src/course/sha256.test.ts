import { expect, test } from 'vitest'
import { sha256Hex, sha256OfBytes } from './sha256.ts'

/** NIST, examples that go with FIPS 180-4 ("SHA256.pdf"), and the well-known digest of nothing. */
const PUBLISHED: readonly (readonly [text: string, digest: string])[] = [
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
]

test('the examples of NIST come out, from no byte to two blocks', () => {
  for (const [text, digest] of PUBLISHED) expect(sha256Hex(text)).toBe(digest)
})

test('a million bytes come out as NIST says', () => {
  // NIST's vector of a million times the letter a, which is 97 in ASCII.
  expect(sha256OfBytes(new Uint8Array(1_000_000).fill(97))).toBe(
    'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
  )
})
