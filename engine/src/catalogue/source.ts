/** One published source. Doc blocks and catalogue items cite it by id. */
export type Source = {
  readonly author: string
  /** Year of the text; 'n.d.' where the text bears no date. */
  readonly year: number | 'n.d.'
  readonly title: string
  readonly publisher: string
  readonly url?: string
}
