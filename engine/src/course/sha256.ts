/** Initial hash value: FIPS 180-4, 5.3.3 (fractional bits of the square roots of the first 8 primes). */
const INITIAL: readonly number[] = [
  0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
]

/** Round constants: FIPS 180-4, 4.2.2 (fractional bits of the cube roots of the first 64 primes). */
const CONSTANTS: readonly number[] = [
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98,
  0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786,
  0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8,
  0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13,
  0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819,
  0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a,
  0x5b9cca4f, 0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7,
  0xc67178f2,
]

/** A text's UTF-8 bytes (RFC 3629); half a surrogate pair becomes U+FFFD, as everywhere. */
const utf8 = (text: string): readonly number[] => {
  const bytes: number[] = []
  for (const character of text) {
    const point = character.codePointAt(0) ?? 0
    const code = point >= 0xd800 && point <= 0xdfff ? 0xfffd : point
    if (code < 0x80) bytes.push(code)
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 63))
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63))
    else
      bytes.push(
        0xf0 | (code >> 18),
        0x80 | ((code >> 12) & 63),
        0x80 | ((code >> 6) & 63),
        0x80 | (code & 63),
      )
  }
  return bytes
}

/** The bytes, a one bit, zeros, and the length in bits, to whole blocks of 64 bytes (5.1.1). */
const padded = (bytes: ArrayLike<number>): DataView => {
  const length = Math.ceil((bytes.length + 9) / 64) * 64
  const block = new Uint8Array(length)
  block.set(bytes)
  const view = new DataView(block.buffer)
  view.setUint8(bytes.length, 0x80)
  view.setUint32(length - 8, Math.floor(bytes.length / 2 ** 29))
  view.setUint32(length - 4, (bytes.length * 8) >>> 0)
  return view
}

const rotr = (word: number, by: number): number => (word >>> by) | (word << (32 - by))

/** The message schedule of one block (6.2.2, step 1). */
const fillSchedule = (blocks: DataView, offset: number, w: Uint32Array): void => {
  for (let t = 0; t < 16; t++) w[t] = blocks.getUint32(offset + 4 * t)
  for (let t = 16; t < 64; t++) {
    const [far = 0, seven = 0, fifteen = 0, two = 0] = [w[t - 16], w[t - 7], w[t - 15], w[t - 2]]
    const small0 = rotr(fifteen, 7) ^ rotr(fifteen, 18) ^ (fifteen >>> 3)
    const small1 = rotr(two, 17) ^ rotr(two, 19) ^ (two >>> 10)
    w[t] = far + small0 + seven + small1
  }
}

/** One block worked into the hash (6.2.2, steps 2 to 4). */
const digestBlock = (w: Uint32Array, hash: Uint32Array): void => {
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = hash
  for (let t = 0; t < 64; t++) {
    const big1 = rotr(e, 6) ^ rotr(e, 11) ^ rotr(e, 25)
    const chosen = (e & f) ^ (~e & g)
    const t1 = (h + big1 + chosen + (CONSTANTS[t] ?? 0) + (w[t] ?? 0)) | 0
    const big0 = rotr(a, 2) ^ rotr(a, 13) ^ rotr(a, 22)
    const t2 = (big0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    ;[h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) | 0, c, b, a, (t1 + t2) | 0]
  }
  ;[a, b, c, d, e, f, g, h].forEach((word, i) => {
    hash[i] = (hash[i] ?? 0) + word
  })
}

/**
 * SHA-256 of bytes, as 64 hexadecimal digits. FIPS 180-4 (NIST, 2015), section 6.2.
 * Written out here because it is also needed where no crypto module is (plain http on a phone has none).
 */
export const sha256OfBytes = (bytes: ArrayLike<number>): string => {
  const blocks = padded(bytes)
  const hash = Uint32Array.from(INITIAL)
  const schedule = new Uint32Array(64)
  for (let offset = 0; offset < blocks.byteLength; offset += 64) {
    fillSchedule(blocks, offset, schedule)
    digestBlock(schedule, hash)
  }
  return [...hash].map((word) => word.toString(16).padStart(8, '0')).join('')
}

/** SHA-256 of a text's UTF-8 bytes. */
export const sha256Hex = (text: string): string => sha256OfBytes(utf8(text))
