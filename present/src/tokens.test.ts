import { describe, expect, it } from 'vitest'
import { TOKEN_NAMES, TOKENS, TWINS, type Twin } from './tokens.ts'
import { tokensCss } from './tokens-css.ts'

/** Relative luminance, WCAG 2.2 definition. */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = parseInt(hex.slice(at, at + 2), 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Contrast ratio, WCAG 2.2 definition. */
const contrast = (a: string, b: string): number => {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x)
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05)
}

const written = TOKEN_NAMES.filter((name) => TOKENS[name].use === 'text')
const grounds = TOKEN_NAMES.filter((name) => TOKENS[name].use === 'ground')
const each = TWINS.flatMap((twin) =>
  written.flatMap((name) => grounds.map((ground) => [name, ground, twin] as const)),
)

describe('colours', () => {
  it('are measured as WCAG measures them', () => {
    // Black on white is 21 to 1 by definition; #777777 on white is 4.48, the known grey that just fails (WebAIM).
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
  })

  it.each(each)('%s can be read on %s by %s (AA, 4.5 to 1)', (name, ground, twin: Twin) => {
    expect(contrast(TOKENS[name][twin], TOKENS[ground][twin])).toBeGreaterThanOrEqual(4.5)
  })

  it.each(TWINS)('ink on paper by %s is fit for the field (AAA, 7 to 1)', (twin) => {
    expect(contrast(TOKENS.ink[twin], TOKENS.paper[twin])).toBeGreaterThanOrEqual(7)
  })

  it('go to the style sheet from the same table, in all three twins', () => {
    const css = tokensCss()
    for (const name of TOKEN_NAMES)
      for (const twin of TWINS) expect(css).toContain(`--${name}:${TOKENS[name][twin]};`)
    expect(css.indexOf('@media print')).toBeGreaterThan(css.indexOf("[data-twin='night']"))
  })
})
