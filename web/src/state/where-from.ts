import { signal } from '@preact/signals'

/** A figure on a screen: the catalogue item behind it, what went in, and which of its outputs is shown. */
export type WhereFrom = {
  readonly item: string
  readonly input: Readonly<Record<string, unknown>>
  readonly output: string
}

/** The figure that somebody asked about; null while nobody does. */
export const askedFigure = signal<WhereFrom | null>(null)

/** Opens the panel for a figure. */
export const askWhereFrom = (from: WhereFrom): void => {
  askedFigure.value = from
}
