/** One published source. Doc blocks and catalogue items cite it by id. */
export type Source = {
  readonly author: string
  readonly year: number
  readonly title: string
  readonly publisher: string
  readonly url?: string
}

/** Every source that a formula or a check cites, one id each. */
export const SOURCES = {
  woodsCoreAeration2009: {
    author: 'Woods',
    year: 2009,
    title: 'Core aeration of putting greens: how much is enough? (revised 2021)',
    publisher: 'Asian Turfgrass Center',
    url: 'http://www.blog.asianturfgrass.com/2009/07/core-aeration-of-putting-greens-how-much-is-enough.html',
  },
  geometry: {
    author: 'Swardwright',
    year: 2026,
    title: 'Plain geometry, worked by hand from the stated inputs',
    publisher: 'this project',
  },
} as const satisfies Record<string, Source>

/** The id of a source in the list. */
export type SourceId = keyof typeof SOURCES
