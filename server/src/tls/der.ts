/**
 * The few words of DER (ITU-T X.690) that a certificate is written in. A value is its tag, its length and its content; the functions
 * are named after the ASN.1 types.
 */
type Der = Buffer

const lengthOf = (length: number): Buffer => {
  if (length < 128) return Buffer.from([length])
  const hex = length.toString(16)
  const bytes = Buffer.from(hex.length % 2 === 0 ? hex : `0${hex}`, 'hex')
  return Buffer.concat([Buffer.from([0x80 | bytes.length]), bytes])
}

const tagged = (tag: number, ...content: readonly Uint8Array[]): Der => {
  const whole = Buffer.concat(content)
  return Buffer.concat([Buffer.from([tag]), lengthOf(whole.length), whole])
}

export const sequence = (...parts: readonly Der[]): Der => tagged(0x30, ...parts)

/** A set of one, which is all that is needed here. */
export const setOf = (part: Der): Der => tagged(0x31, part)

/** A whole number from its bytes, most significant first; a first bit that is set would make it negative. */
export const integer = (bytes: Uint8Array): Der =>
  tagged(0x02, ...((bytes[0] ?? 0) >= 0x80 ? [Buffer.from([0]), bytes] : [bytes]))

export const trueValue = (): Der => tagged(0x01, Buffer.from([0xff]))

export const octets = (...content: readonly Uint8Array[]): Der => tagged(0x04, ...content)

/** Bits; `unused` of the last byte do not count. */
export const bits = (content: Uint8Array, unused = 0): Der => tagged(0x03, Buffer.from([unused]), content)

export const utf8 = (text: string): Der => tagged(0x0c, Buffer.from(text, 'utf8'))

/** A moment, whole seconds: the short form to 2049, the long one after (RFC 5280, section 4.1.2.5). */
export const time = (ms: number): Der => {
  const text = `${new Date(ms).toISOString().slice(0, 19).replaceAll(/[-:T]/gu, '')}Z`
  return text < '2050' ? tagged(0x17, Buffer.from(text.slice(2))) : tagged(0x18, Buffer.from(text))
}

const base128 = (arc: number): readonly number[] => {
  const rest: number[] = []
  for (let left = Math.floor(arc / 128); left > 0; left = Math.floor(left / 128))
    rest.unshift(0x80 | (left % 128))
  return [...rest, arc % 128]
}

/** An object identifier such as `2.5.29.17`. */
export const identifier = (text: string): Der => {
  const [first = 0, second = 0, ...arcs] = text.split('.').map(Number)
  return tagged(0x06, Buffer.from([40 * first + second, ...arcs.flatMap(base128)]))
}

/** A field with a number of its own that holds whole values. */
export const field = (number: number, ...parts: readonly Der[]): Der => tagged(0xa0 | number, ...parts)

/** A field with a number of its own that holds bare content. */
export const bareField = (number: number, content: Uint8Array): Der => tagged(0x80 | number, content)
