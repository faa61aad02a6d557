import { describe, expect, it } from 'vitest'
import { partsOf } from './drawing.ts'
import { toSvgString } from './drawing-text.ts'
import { sandBar, type SandBarInput } from './sand-bar.ts'
import { METRIC } from './units.ts'

const input: SandBarInput = {
  needT: { low: 40, likely: 52, high: 61 },
  stockT: 6,
  lorryT: 20,
  lorries: 3,
  bayT: 45,
  units: METRIC,
  widthPx: 358,
  scope: 'test',
}
const title = (changes: Partial<SandBarInput>, kind: string): unknown =>
  partsOf(sandBar({ ...input, ...changes }), kind)[0]?.attributes['aria-label']

describe('the sand order', () => {
  it('says the need as a band', () => {
    expect(title({}, 'need')).toBe('needed: 40 to 61 t, likely 52 t')
  })

  it('draws each lorry load, and adds them to what lies in the bay', () => {
    expect(partsOf(sandBar(input), 'lorry')).toHaveLength(3)
    // 6 + 3 x 20 = 66 t
    expect(toSvgString(sandBar(input))).toContain('6 t in the bay + 3 lorry loads of 20 t = 66 t')
  })

  it.each([
    // Room 45 - 6 = 39 t holds one load of 20; 45 t empty holds two; 70 t with 6 in holds all three; 20 t with 6 in holds none.
    [{}, 'the bay holds 45 t: 1 load fits at once'],
    [{ stockT: 0 }, 'the bay holds 45 t: 2 loads fit at once'],
    [{ bayT: 70 }, 'the bay holds 70 t: all loads fit at once'],
    [{ bayT: 20 }, 'the bay holds 20 t: no load fits yet'],
  ])('says how many loads the bay takes at once', (changes, words) => {
    expect(title(changes, 'bay')).toBe(words)
  })

  it('says what is missing to the likely need', () => {
    expect(partsOf(sandBar(input), 'short')).toEqual([])
    // 6 + 2 x 20 = 46 of 52 t
    expect(toSvgString(sandBar({ ...input, lorries: 2 }))).toContain('6 t short')
  })
})
