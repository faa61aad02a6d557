/** An element of a small XML document. Names come without their namespace prefix. */
export type XmlElement = {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: readonly XmlElement[]
  /** All text directly inside, entities resolved. */
  readonly text: string
}

type OpenElement = { name: string; attributes: Record<string, string>; children: OpenElement[]; text: string }

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

const codePoint = (entity: string): string | undefined => {
  const code = entity.startsWith('#x')
    ? Number.parseInt(entity.slice(2), 16)
    : Number.parseInt(entity.slice(1), 10)
  return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : undefined
}

const plain = (text: string): string =>
  text.replaceAll(/&(#x[\da-f]+|#\d+|[a-z]+);/giu, (whole, entity: string) => {
    const found = entity.startsWith('#') ? codePoint(entity.toLowerCase()) : ENTITIES[entity]
    return found ?? whole
  })

const localName = (name: string): string => name.slice(name.indexOf(':') + 1)

const attributesOf = (source: string): Record<string, string> => {
  const found: Record<string, string> = {}
  for (const match of source.matchAll(/([^\s=/]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/gu))
    found[localName(match[1] ?? '')] = plain(match[2] ?? match[3] ?? '')
  return found
}

/** Comments, declarations, raw text and tags, in this order; attribute values may hold `>`. */
const PIECES =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!\[CDATA\[([\s\S]*?)\]\]>|<![^>]*>|<\/\s*([^\s>]+)\s*>|<([^\s/>!?]+)((?:[^>"']|"[^"]*"|'[^']*')*)>/gu

/**
 * Reads the XML that GPX, KML and OpenStreetMap files use: elements, attributes, text, raw text, the five named entities and character
 * numbers. Tolerant: a closing tag without an opening one is passed over, and what is left open at the end counts as closed. Document types
 * and their own entities are not read. Answers an element without name that holds the document's elements.
 */
export const readXml = (source: string): XmlElement => {
  const root: OpenElement = { name: '', attributes: {}, children: [], text: '' }
  const open = [root]
  let at = 0
  for (const match of source.matchAll(PIECES)) {
    const top = open[open.length - 1] ?? root
    top.text += plain(source.slice(at, match.index))
    at = match.index + match[0].length
    const [, raw, closing, opening, rest = ''] = match
    if (raw !== undefined) top.text += raw
    if (closing !== undefined) {
      const depth = open.findLastIndex((element) => element.name === localName(closing))
      if (depth > 0) open.length = depth
    }
    if (opening === undefined) continue
    const element = { name: localName(opening), attributes: attributesOf(rest), children: [], text: '' }
    top.children.push(element)
    if (!rest.trimEnd().endsWith('/')) open.push(element)
  }
  return root
}

/** All elements of a name inside an element, at any depth, in document order. */
export const elementsNamed = (element: XmlElement, name: string): readonly XmlElement[] =>
  element.children.flatMap((child) => [
    ...(child.name === name ? [child] : []),
    ...elementsNamed(child, name),
  ])

/** The trimmed text of the first direct child of that name. */
export const childText = (element: XmlElement, name: string): string | undefined =>
  element.children.find((child) => child.name === name)?.text.trim()

/** Text made safe to stand in XML content or attributes. */
export const xmlText = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    // Control characters have no place in XML 1.0, not even as numbers.
    .replaceAll(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
