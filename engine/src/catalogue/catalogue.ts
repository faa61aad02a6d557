import { fail, type Result } from '../result.ts'
import { AGRONOMY_ITEMS } from '../agronomy/items.ts'
import { WEATHER_ITEMS } from '../weather/weatherItems.ts'
import type { CalculationError } from './errors.ts'
import type { Item } from './item.ts'
import { runItem } from './run.ts'

/**
 * Every calculation that stands alone, in the order shown to people.
 * A room exports its items as one list; add the list here and every surface (CLI, HTTP, app, docs, tests) has it.
 */
export const CATALOGUE: readonly Item[] = [...AGRONOMY_ITEMS, ...WEATHER_ITEMS]

const itemByName: ReadonlyMap<string, Item> = new Map(CATALOGUE.map((entry) => [entry.name, entry]))

/** Runs the named calculation on an unchecked input. */
export const calculate = (name: string, input: unknown): Result<unknown, CalculationError> => {
  const found = itemByName.get(name)
  return found === undefined ? fail({ type: 'unknownItem', name }) : runItem(found, input)
}

/** The item of that name, if there is one. */
export const findItem = (name: string): Item | undefined => itemByName.get(name)
