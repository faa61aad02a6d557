/** Colours of the drawings, as in the app by day. */
export const COLOUR = {
  paper: '#f7f4ec',
  ink: '#17211b',
  quiet: '#55605a',
  rule: '#c9c3b2',
  leaf: '#2c6a3f',
  rain: '#1f5f8f',
  rust: '#a23a1c',
  ochre: '#855600',
  sand: '#d8b878',
  thatch: '#7b5730',
  loam: '#4a382a',
} as const

/** A number of a drawing, to a tenth: the same text on every machine. */
export const px = (value: number): string => String(Number(value.toFixed(1)))

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** Attributes of an element; numbers are rounded to a tenth. */
const attributes = (of: Readonly<Record<string, string | number>>): string =>
  Object.entries(of)
    .map(([name, value]) => ` ${name}="${typeof value === 'number' ? px(value) : escaped(value)}"`)
    .join('')

/** An element without content. */
export const shape = (name: string, of: Readonly<Record<string, string | number>>): string =>
  `<${name}${attributes(of)}/>`

/** A line of text with its baseline at y. */
export const label = (
  x: number,
  y: number,
  text: string,
  of: Readonly<Record<string, string | number>> = {},
): string => `<text${attributes({ x, y, fill: COLOUR.ink, ...of })}>${escaped(text)}</text>`

/** A whole picture; `title` is read out to those who cannot see it. */
export const picture = (width: number, height: number, title: string, parts: readonly string[]): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="sans-serif" font-size="13">`,
    `<title>${escaped(title)}</title>`,
    shape('rect', { width, height, fill: COLOUR.paper }),
    ...parts,
    '</svg>',
    '',
  ].join('\n')
