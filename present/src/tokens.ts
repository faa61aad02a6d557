/** Which set of colours: paper by day, the same by night, black on white for the printer. */
export type Twin = 'day' | 'night' | 'print'

/** The three twins. */
export const TWINS = ['day', 'night', 'print'] as const satisfies readonly Twin[]

/** One colour in its twins, '#rrggbb', and what it means. */
export type Token = Readonly<Record<Twin, string>> & {
  /** 'ground' is written on, 'text' may be written with, 'line' only rules and fills, 'soil' only in drawings of soil. */
  readonly use: 'ground' | 'text' | 'line' | 'soil'
  readonly means: string
}

/**
 * All colours there are. A colour never stands alone: a word or a pattern goes with it.
 * Text colours reach WCAG 2 AA (4.5 to 1) on paper and on wash in each twin; `tokens.test.ts` computes it.
 */
export const TOKENS = {
  paper: { use: 'ground', day: '#f7f4ec', night: '#141a17', print: '#ffffff', means: 'the page' },
  wash: {
    use: 'ground',
    day: '#efeadd',
    night: '#1c2420',
    print: '#ffffff',
    means: 'a field or row set off from the page',
  },
  ink: { use: 'text', day: '#17211b', night: '#eef1ea', print: '#000000', means: 'text, outlines' },
  quiet: { use: 'text', day: '#55605a', night: '#a9b4ac', print: '#404040', means: 'secondary text' },
  leaf: { use: 'text', day: '#2c6a3f', night: '#7fc796', print: '#000000', means: 'live turf, in play, yes' },
  rain: { use: 'text', day: '#1f5f8f', night: '#7fb8e6', print: '#000000', means: 'rain, water' },
  dew: { use: 'text', day: '#2f6f76', night: '#8fcdd3', print: '#333333', means: 'wet leaf' },
  dusk: { use: 'text', day: '#574a7d', night: '#b9aee0', print: '#333333', means: 'dark' },
  rust: { use: 'text', day: '#a23a1c', night: '#f2997c', print: '#000000', means: 'stop, no, caught, error' },
  ochre: {
    use: 'text',
    day: '#855600',
    night: '#e6bb62',
    print: '#000000',
    means: 'care, opened, rough figure',
  },
  rule: { use: 'line', day: '#c9c3b2', night: '#3a453f', print: '#999999', means: 'hairlines, grids' },
  sand: { use: 'soil', day: '#d8b878', night: '#d8b878', print: '#f2f2f2', means: 'sand' },
  thatch: { use: 'soil', day: '#7b5730', night: '#7b5730', print: '#9a9a9a', means: 'thatch' },
  loam: {
    use: 'soil',
    day: '#4a382a',
    night: '#4a382a',
    print: '#6b6b6b',
    means: 'rootzone rich in organic matter',
  },
  turf: { use: 'soil', day: '#5d9468', night: '#5d9468', print: '#8a8a8a', means: 'grass in a drawing' },
  trees: { use: 'soil', day: '#a9bd9f', night: '#2d4435', print: '#d9d9d9', means: 'woodland on the map' },
  pool: {
    use: 'soil',
    day: '#b5cfdd',
    night: '#244257',
    print: '#ececec',
    means: 'standing water on the map',
  },
} as const satisfies Readonly<Record<string, Token>>

/** The name of a colour. */
export type TokenName = keyof typeof TOKENS

/** Names of all colours, in the table's order. */
export const TOKEN_NAMES = Object.keys(TOKENS) as readonly TokenName[]

/** A colour as drawings and style sheets name it; follows the twin of the page. */
export const paint = (name: TokenName): string => `var(--${name})`

/** Sizes of text in px: `field` is the least on crew pages, `figure` a number that matters. */
export const TEXT_PX = { small: 14, body: 16, field: 18, lead: 22, title: 28, figure: 44 } as const

/** One step of all spacing, px. */
export const STEP_PX = 4

/** Least sizes of things to touch, px: on the desk, in the field, and the two buttons under the thumb. */
export const TARGET_PX = { desk: 40, field: 56, thumb: 64 } as const

/** Width at which one column becomes two, px. */
export const TWO_COLUMNS_PX = 720
