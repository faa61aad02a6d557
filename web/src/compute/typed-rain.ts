import { HOUR_MS, addDays, instantOf, localOf, unknownHours, type WeatherHours } from '@swardwright/engine'
import type { BodyOf } from '@swardwright/journal'

/** Rain that somebody typed in: on the days from `from` to `to` it rains in these spells and not else. */
export type TypedRain = BodyOf<'rainTyped'>

/** A stretch of rain at one rate. */
export type Spell = TypedRain['spells'][number]

/** Hours without any reading, from the start of one day to the end of another. */
const blankHours = (from: string, to: string, timeZone: string): WeatherHours => {
  const startMs = instantOf(from, 0, timeZone)
  const hours = Math.round((instantOf(addDays(to, 1), 0, timeZone) - startMs) / HOUR_MS)
  return unknownHours(startMs, hours)
}

/** Rain that a spell brings in the hour that starts here, mm. */
const rainInHour = (spell: Spell, hourMs: number): number => {
  const overlapMs =
    Math.min(Date.parse(spell.finish), hourMs + HOUR_MS) - Math.max(Date.parse(spell.start), hourMs)
  return overlapMs <= 0 ? 0 : (spell.mmPerH * overlapMs) / HOUR_MS
}

const overlaid = (weather: WeatherHours, typed: TypedRain, timeZone: string): WeatherHours => {
  const rainMm = weather.rainMm.map((rain, row) => {
    const hourMs = weather.startMs + (row % weather.hours) * HOUR_MS
    const { date } = localOf(hourMs, timeZone)
    if (date < typed.from || date > typed.to) return rain
    return typed.spells.reduce((sum, spell) => sum + rainInHour(spell, hourMs), 0)
  })
  return { ...weather, rainMm }
}

/**
 * The weather with typed rain laid over it, oldest first, so that the later word counts where two name one day.
 * Without a forecast the typed days alone are known; all else of their hours is missing. Null when nothing is known at all.
 */
export const withTypedRain = (
  weather: WeatherHours | null,
  typed: readonly TypedRain[],
  timeZone: string,
): WeatherHours | null => {
  if (typed.length === 0) return weather
  const days = typed.flatMap((one) => [one.from, one.to]).sort()
  const base = weather ?? blankHours(days[0] ?? '', days.at(-1) ?? '', timeZone)
  return typed.reduce((hours, one) => overlaid(hours, one, timeZone), base)
}

/** The rainy hours of some days as spells, one an hour, joined where the rate stays the same. */
export const spellsOf = (
  weather: WeatherHours,
  days: { readonly from: string; readonly to: string },
  timeZone: string,
): readonly Spell[] => {
  const spells: Spell[] = []
  for (let hour = 0; hour < weather.hours; hour++) {
    const startMs = weather.startMs + hour * HOUR_MS
    const mmPerH = weather.rainMm[hour] ?? NaN
    const { date } = localOf(startMs, timeZone)
    if (date < days.from || date > days.to || !(mmPerH > 0)) continue
    const start = new Date(startMs).toISOString()
    const finish = new Date(startMs + HOUR_MS).toISOString()
    const last = spells.at(-1)
    if (last !== undefined && last.finish === start && last.mmPerH === mmPerH)
      spells[spells.length - 1] = { ...last, finish }
    else spells.push({ start, finish, mmPerH })
  }
  return spells
}

/** Rain without a dry hour in it, and how hard it falls at its hardest. */
export type Shower = { readonly start: string; readonly finish: string; readonly mostMmPerH: number }

/** Spells that follow each other, as one shower each. */
export const showersOf = (spells: readonly Spell[]): readonly Shower[] => {
  const showers: Shower[] = []
  for (const { start, finish, mmPerH } of spells) {
    const last = showers.at(-1)
    if (last !== undefined && last.finish === start)
      showers[showers.length - 1] = { ...last, finish, mostMmPerH: Math.max(last.mostMmPerH, mmPerH) }
    else showers.push({ start, finish, mostMmPerH: mmPerH })
  }
  return showers
}

const moved = (spell: Spell, byHours: number): Spell => ({
  ...spell,
  start: new Date(Date.parse(spell.start) + byHours * HOUR_MS).toISOString(),
  finish: new Date(Date.parse(spell.finish) + byHours * HOUR_MS).toISOString(),
})

/**
 * What to write down when the rain of one day comes earlier (negative hours) or later: that day and its neighbours, since rain
 * may move over midnight; their own rain stays where it is.
 */
export const rainMoved = (
  weather: WeatherHours,
  date: string,
  byHours: number,
  timeZone: string,
): TypedRain => {
  const days = { from: addDays(date, -1), to: addDays(date, 1) }
  const spells = spellsOf(weather, days, timeZone).map((spell) =>
    localOf(Date.parse(spell.start), timeZone).date === date ? moved(spell, byHours) : spell,
  )
  return { ...days, spells: spells.toSorted((a, b) => Date.parse(a.start) - Date.parse(b.start)) }
}
