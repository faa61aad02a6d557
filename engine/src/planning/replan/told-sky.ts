import { ok, type Result } from '../../result.ts'
import type { CalculationError } from '../../catalogue/errors.ts'
import { MINUTE_MS } from '../../time/zone.ts'
import { HOUR_MS } from '../../weather/hours.ts'
import { parseInstant } from '../check/instant.ts'
import type { Span } from '../problem.ts'
import type { ReadSky, Sky, SkyWanted } from '../sky.ts'
import { intersectSpans, mergeSpans, subtractSpans } from '../spans.ts'
import type { DayFact } from './facts.ts'
import { changesWeather, weatherWithFacts } from './weather-with-facts.ts'

type RainFact = Extract<DayFact, { readonly kind: 'rain' }>

const isRain = (fact: DayFact): fact is RainFact => fact.kind === 'rain'

const nextHour = (instant: string): string =>
  new Date(Math.ceil(parseInstant(instant) / HOUR_MS) * HOUR_MS).toISOString()

/** The facts with each rain begun at the next full hour; one that is over by then is left out. */
const begunLate = (facts: readonly DayFact[]): readonly DayFact[] =>
  facts
    .map((fact) => (isRain(fact) ? { ...fact, from: nextHour(fact.from) } : fact))
    .filter((fact) => !isRain(fact) || parseInstant(fact.from) < parseInstant(fact.until))

/** Minutes of the hours in which told rain begins, up to that minute. */
const beforeRain = (facts: readonly DayFact[], originMs: number): readonly Span[] => {
  const minute = (ms: number): number => Math.floor((ms - originMs) / MINUTE_MS)
  const rains = facts.filter(isRain).map(({ from, until }) => {
    const fromMs = parseInstant(from)
    const start = minute(fromMs)
    return {
      head: { start: minute(Math.floor(fromMs / HOUR_MS) * HOUR_MS), end: start },
      rain: { start, end: minute(parseInstant(until)) },
    }
  })
  return subtractSpans(mergeSpans(rains.map(({ head }) => head)), mergeSpans(rains.map(({ rain }) => rain)))
}

/** The first sky, but in some spans the second. */
const within = (sky: readonly Span[], other: readonly Span[], spans: readonly Span[]): readonly Span[] =>
  mergeSpans([...subtractSpans(sky, spans), ...intersectSpans(other, spans)])

/**
 * The sky with the rain that was told, and without the rain that does not come. Weather is reckoned by whole hours, and an hour that told rain touches is a wet one;
 * but rain told for a minute begins in that minute: work up to then is as the hour was before, and what was finished by then was finished dry.
 * Null where no fact is about the weather. Errors: those of `readSky`.
 */
export const skyWithFacts = (
  readSky: ReadSky,
  wanted: SkyWanted,
  facts: readonly DayFact[],
): Result<Sky | null, CalculationError> => {
  if (!changesWeather(facts)) return ok(null)
  const { weather, originMs } = wanted
  const read = (told: readonly DayFact[]): Result<Sky, CalculationError> =>
    readSky({ ...wanted, weather: weatherWithFacts(weather, told, originMs) })
  const sky = read(facts)
  const spans = beforeRain(facts, originMs)
  if (!sky.ok || spans.length === 0) return sky
  const before = read(begunLate(facts))
  if (!before.ok) return before
  const { rain, workable } = sky.value
  return ok({
    ...sky.value,
    rain: within(rain, before.value.rain, spans),
    workable: new Map(
      [...workable].map(([operation, own]) => [
        operation,
        within(own, before.value.workable.get(operation) ?? [], spans),
      ]),
    ),
  })
}
