/** An element of SVG as plain data. The app renders it as elements with handlers, the server and the terminal print it. */
export type Drawing = {
  readonly tag: string
  /** Attributes by their SVG name. `data-part` and `data-id` say what a person touched. */
  readonly attributes: Readonly<Record<string, string | number>>
  /** Elements, and text between them. */
  readonly children: readonly (Drawing | string)[]
}

/** What may stand where children stand; nothing is drawn for null. */
export type DrawingChild = Drawing | string | null

/** Builds an element. Attributes that are undefined are left out; numbers keep at most three decimals, so that files stay small. */
export const draw = (
  tag: string,
  attributes: Readonly<Record<string, string | number | undefined>> = {},
  children: readonly DrawingChild[] = [],
): Drawing => ({
  tag,
  attributes: Object.fromEntries(
    Object.entries(attributes).flatMap(([name, value]) =>
      value === undefined ? [] : [[name, typeof value === 'number' ? round3(value) : value]],
    ),
  ),
  children: children.filter((child) => child !== null),
})

const round3 = (value: number): number => Math.round(value * 1000) / 1000

/** A number as it stands in path data: one decimal of a pixel is finer than any printer here. */
export const coordinate = (value: number): string => String(Math.round(value * 10) / 10)

/** A group that a person can touch: `part` names the kind ('layer', 'hole'), `id` which one, `title` what it tells. */
export const part = (kind: string, id: string, title: string, children: readonly DrawingChild[]): Drawing =>
  draw('g', { 'data-part': kind, 'data-id': id, role: 'img', 'aria-label': title }, [
    draw('title', {}, [title]),
    ...children,
  ])

/** The outermost element. `widthPx` and `heightPx` are the natural size; the drawing scales with its box. */
export const sheet = (
  size: { readonly widthPx: number; readonly heightPx: number; readonly label: string },
  children: readonly DrawingChild[],
): Drawing =>
  draw(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${coordinate(size.widthPx)} ${coordinate(size.heightPx)}`,
      width: size.widthPx,
      height: size.heightPx,
      role: 'group',
      'aria-label': size.label,
      'font-family': FACE,
      'font-size': 12,
    },
    children,
  )

/** The face of all pages and drawings, with what stands in where it is not there. */
export const FACE =
  "'Atkinson Hyperlegible Next Variable', 'Atkinson Hyperlegible Next', system-ui, sans-serif"

/** All parts of a drawing of one kind, in the order drawn. */
export const partsOf = (drawing: Drawing, kind: string): readonly Drawing[] => [
  ...(drawing.attributes['data-part'] === kind ? [drawing] : []),
  ...drawing.children.flatMap((child) => (typeof child === 'string' ? [] : partsOf(child, kind))),
]
