import { fail, type Result } from '../result.ts'
import { AGRONOMY_ITEMS } from '../agronomy/items.ts'
import { GROUND_ITEMS } from '../ground/pass-items.ts'
import { WEATHER_ITEMS } from '../weather/weather-items.ts'
import type { CalculationError } from './errors.ts'
import type { Item } from './item.ts'
import { runItem } from './run.ts'
import { uncertainFields } from './three-point.ts'
import { runUncertain, type DrawOptions } from './uncertain.ts'

/**
 * Every calculation that stands alone, in the order shown to people.
 * A room exports its items as one list; add the list here and every surface (CLI, HTTP, app, docs, tests) has it.
 */
export const CATALOGUE: readonly Item[] = [...AGRONOMY_ITEMS, ...WEATHER_ITEMS, ...GROUND_ITEMS]

const itemByName: ReadonlyMap<string, Item> = new Map(CATALOGUE.map((entry) => [entry.name, entry]))

/**
 * Runs the named calculation on an unchecked input. Any number in the input may be `{ low, typical, high }`; each number of the answer is
 * then one too (10th, 50th and 90th percentile of seeded draws). Never throws for what a person typed.
 */
export const calculate = (
  name: string,
  input: unknown,
  options: DrawOptions = {},
): Result<unknown, CalculationError> => {
  const found = itemByName.get(name)
  if (found === undefined) return fail({ type: 'unknownItem', name })
  const uncertain = uncertainFields(found.inputs, input)
  return uncertain.length === 0 ? runItem(found, input) : runUncertain(found, input, uncertain, options)
}

/** The item of that name, if there is one. */
export const findItem = (name: string): Item | undefined => itemByName.get(name)
