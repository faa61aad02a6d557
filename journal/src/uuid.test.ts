import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import * as fc from 'fast-check'
import { entryId, uuidV7 } from './uuid.ts'

describe('uuidV7', () => {
  // RFC 9562 (2024), appendix A.6: unix_ts_ms 0x017F22E279B0, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
  it('[J2] makes the example of RFC 9562, appendix A.6', () => {
    const random = Uint8Array.from([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f])
    expect(uuidV7({ nowMs: 0x017f22e279b0, random })).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f')
  })

  it('[J2] makes ids that are valid and sort by their millisecond, whatever the chance', () => {
    const bytes = fc.uint8Array({ minLength: 10, maxLength: 12 })
    const ms = fc.integer({ min: 0, max: 2 ** 48 - 2 })
    fc.assert(
      fc.property(ms, bytes, bytes, (nowMs, a, b) => {
        const early = uuidV7({ nowMs, random: a })
        const late = uuidV7({ nowMs: nowMs + 1, random: b })
        expect(v.is(entryId, early)).toBe(true)
        expect(early < late).toBe(true)
      }),
      { seed: 11 },
    )
  })

  it('uses 74 bits of the chance it is given', () => {
    const none = uuidV7({ nowMs: 0, random: new Uint8Array(10) })
    const all = uuidV7({ nowMs: 0, random: new Uint8Array(10).fill(255) })
    expect(none).toBe('00000000-0000-7000-8000-000000000000')
    expect(all).toBe('00000000-0000-7fff-bfff-ffffffffffff')
  })

  it('throws when the clock or the chance of the caller is unfit', () => {
    expect(() => uuidV7({ nowMs: 1.5, random: new Uint8Array(10) })).toThrow('whole epoch milliseconds')
    expect(() => uuidV7({ nowMs: -1, random: new Uint8Array(10) })).toThrow('whole epoch milliseconds')
    expect(() => uuidV7({ nowMs: 1, random: new Uint8Array(9) })).toThrow('10 random bytes')
  })
})
