import { computed } from '@preact/signals'
import type { Operation } from '@swardwright/engine'
import type { RunsTold } from '../compute/runs-told.ts'
import { facts } from './journal.ts'
import { latest } from './latest.ts'

/** The runs of the page that is open. */
export const runsTold = latest<RunsTold | null>()

type Driven = { readonly headingDeg: number; readonly at: string }

/** The heading driven last on each green, by green and operation. */
const lastDriven = computed(
  (): ReadonlyMap<string, Driven> =>
    // Entries come in the order in which they happened, so a later one takes the place of an earlier one.
    new Map(
      facts.value.runsDriven.map(({ at, value }) => [
        `${value.green} ${value.operation}`,
        { headingDeg: value.headingDeg, at },
      ]),
    ),
)

/** When and in which heading an operation was last driven on a green; null where nobody said. */
export const lastDrivenOn = (green: string, operation: Operation): Driven | null =>
  lastDriven.value.get(`${green} ${operation}`) ?? null

/** The headings driven last on a green, by operation. */
export const lastHeadings = (green: string): Readonly<Partial<Record<Operation, number>>> =>
  Object.fromEntries(
    facts.value.runsDriven
      .filter(({ value }) => value.green === green)
      .map(({ value }) => [value.operation, value.headingDeg]),
  )
