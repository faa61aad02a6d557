import { HOUR_MS, type WeatherHours } from '../weather/hours.ts'
import type { Draw } from './draw.ts'

/** What the weather is asked to be. */
export type RandomWeatherWish = {
  /** Local midnight of the first day, epoch ms. */
  readonly startMs: number
  readonly days: number
  readonly kind: 'dry' | 'mixed' | 'wet'
  readonly latitudeDeg: number
  readonly dayOfYear: number
}

type Day = {
  readonly dawnC: number
  readonly warmestC: number
  readonly dryness: number
  readonly cloud: number
  readonly windMPerS: number
  /** Hours of the day in which rain falls, from first to before last. */
  readonly rain: readonly [first: number, last: number]
  readonly rainMmPerH: number
}

const RAIN_PERCENT = { dry: 0, mixed: 35, wet: 80 } as const

const randomDay = (draw: Draw, kind: RandomWeatherWish['kind']): Day => {
  const dawnC = draw.stepped(4, 14, 0.5)
  const isWet = draw.chance(RAIN_PERCENT[kind])
  const first = draw.whole(0, 22)
  return {
    dawnC,
    warmestC: dawnC + draw.stepped(4, 10, 0.5),
    dryness: draw.stepped(0.3, 1.5, 0.1),
    cloud: isWet ? draw.stepped(0.7, 1, 0.05) : draw.stepped(0, kind === 'dry' ? 0.5 : 0.9, 0.05),
    windMPerS: draw.stepped(1, 8, 0.5),
    rain: isWet ? [first, Math.min(24, first + draw.whole(1, 8))] : [24, 24],
    rainMmPerH: draw.stepped(0.2, 3, 0.1),
  }
}

/** Sine of the sun's height; declination by FAO-56 equation 24, solar noon taken as 13:00 on the summer clock. */
const sunSine = (wish: RandomWeatherWish, hour: number): number => {
  const declination = 0.409 * Math.sin((2 * Math.PI * (wish.dayOfYear + hour / 24)) / 365 - 1.39)
  const latitude = (wish.latitudeDeg * Math.PI) / 180
  const turn = (((hour % 24) - 13) * Math.PI) / 12
  return (
    Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.cos(turn)
  )
}

type Hour = Record<
  'rainMm' | 'temperatureC' | 'dewPointC' | 'windMPerS' | 'gustMPerS' | 'radiationWPerM2',
  number
>

/** Coldest at five, warmest at fifteen; the dew point a little under dawn; wind by day; radiation by sun and cloud (Kasten and Czeplak, 1980). */
const hourOf = (wish: RandomWeatherWish, days: readonly Day[], h: number): Hour => {
  const hour = h % 24
  const day = days[Math.floor(h / 24)] ?? days[0]
  const next = days[Math.floor(h / 24) + 1] ?? day
  if (day === undefined || next === undefined)
    return { rainMm: 0, temperatureC: 10, dewPointC: 8, windMPerS: 2, gustMPerS: 3, radiationWPerM2: 0 }
  const share = hour < 5 ? 0 : hour < 15 ? (hour - 5) / 10 : (hour - 15) / 14
  const from = hour < 15 ? day.dawnC : day.warmestC
  const to = hour < 5 ? day.dawnC : hour < 15 ? day.warmestC : next.dawnC
  const temperatureC = from + ((to - from) * (1 - Math.cos(Math.PI * share))) / 2
  const windMPerS = day.windMPerS * (hour > 7 && hour < 20 ? 1 : 0.5)
  const isRain = hour >= day.rain[0] && hour < day.rain[1]
  const sine = Math.max(0, sunSine(wish, h + 0.5))
  return {
    rainMm: isRain ? day.rainMmPerH : 0,
    temperatureC,
    dewPointC: Math.min(temperatureC - 0.1, day.dawnC - day.dryness),
    windMPerS,
    gustMPerS: windMPerS * 1.6,
    radiationWPerM2: sine <= 0.01 ? 0 : 1098 * sine * Math.exp(-0.057 / sine) * (1 - 0.75 * day.cloud ** 3.4),
  }
}

/** Made-up but coherent hours of weather, one member. Rain comes as one spell a day at most. */
export const randomWeather = (draw: Draw, wish: RandomWeatherWish): WeatherHours => {
  const days = Array.from({ length: wish.days }, () => randomDay(draw, wish.kind))
  const rows = Array.from({ length: wish.days * 24 }, (_, h) => hourOf(wish, days, h))
  const column = (name: keyof Hour): Float64Array => Float64Array.from(rows, (row) => row[name])
  return {
    startMs: Math.round(wish.startMs / HOUR_MS) * HOUR_MS,
    hours: rows.length,
    members: 1,
    rainMm: column('rainMm'),
    temperatureC: column('temperatureC'),
    dewPointC: column('dewPointC'),
    windMPerS: column('windMPerS'),
    gustMPerS: column('gustMPerS'),
    radiationWPerM2: column('radiationWPerM2'),
  }
}
