import type { Drawing } from './drawing.ts'
import { TOKENS, type TokenName, type Twin } from './tokens.ts'

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Characters that XML 1.0 has no way to write (section 2.2); a name pasted with one of them would break the file. */
// oxlint-disable-next-line no-control-regex -- naming control characters is the point
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/gu

/** Text made safe for SVG and HTML, between tags and inside quoted attributes. */
export const escapeMarkup = (text: string): string =>
  text.replace(NOT_XML, '').replace(/[&<>"']/gu, (character) => ESCAPES[character] ?? character)

const isToken = (name: string): name is TokenName => Object.hasOwn(TOKENS, name)

/** Puts the colours of one twin in place of `var(--token)`. */
const coloured = (value: string, twin: Twin): string =>
  value.replace(/var\(--([a-z]+)\)/gu, (whole, name: string) => (isToken(name) ? TOKENS[name][twin] : whole))

const written = (drawing: Drawing, twin: Twin | null): string => {
  const attributes = Object.entries(drawing.attributes)
    .map(([name, value]) => {
      const text = String(value)
      return ` ${name}="${escapeMarkup(twin === null ? text : coloured(text, twin))}"`
    })
    .join('')
  const inside = drawing.children
    .map((child) => (typeof child === 'string' ? escapeMarkup(child) : written(child, twin)))
    .join('')
  return inside === ''
    ? `<${drawing.tag}${attributes}/>`
    : `<${drawing.tag}${attributes}>${inside}</${drawing.tag}>`
}

/**
 * A drawing as SVG text. With `twin`, colours are written out, for a file or a sheet of paper that has no style sheet;
 * without it they stay `var(--ink)` and follow the page.
 */
export const toSvgString = (drawing: Drawing, twin?: Twin): string => written(drawing, twin ?? null)
