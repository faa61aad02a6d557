import { ARCHIVE_VARIABLES } from '@swardwright/engine'

/** What can be asked of a provider. */
export type Asked = 'forecast' | 'ensemble' | 'archive'

/** Where weather is asked for: one address for each kind of question. */
export type Provider = { readonly [kind in Asked]: string }

/**
 * The open service that is asked when a club turns the weather on and the operator has named no other. Its free use is for private purposes; a club that
 * earns money with its course names its own contract by `--weather-url`.
 */
export const USUAL_PROVIDER: Provider = {
  forecast: 'https://api.open-meteo.com/v1/forecast',
  ensemble: 'https://ensemble-api.open-meteo.com/v1/ensemble?models=icon_seamless',
  archive: 'https://archive-api.open-meteo.com/v1/archive',
}

/** A provider from the address an operator gave: `{kind}` in it becomes forecast, ensemble or archive; without it `/v1/KIND` is put behind. Null when it is no web address. */
export const providerOf = (address: string): Provider | null => {
  const template = address.includes('{kind}') ? address : `${address.replace(/\/+$/u, '')}/v1/{kind}`
  const url = (kind: Asked): string => template.replaceAll('{kind}', kind)
  if (!URL.canParse(url('forecast'))) return null
  const { protocol, username } = new URL(url('forecast'))
  if (!['http:', 'https:'].includes(protocol) || username !== '') return null
  return { forecast: url('forecast'), ensemble: url('ensemble'), archive: url('archive') }
}

/** The host of a provider, to name it to people: never a path or a query, which may hold a key. */
export const hostOf = (provider: Provider): string => new URL(provider.forecast).host

/** A place as it is sent: two decimals are about a kilometre, which is finer than any forecast. */
export type PlaceSent = { readonly latitudeDeg: number; readonly longitudeDeg: number }

/** Rounds a place to what is sent of it. */
export const roundedPlace = ([longitude, latitude]: readonly [number, number]): PlaceSent => ({
  latitudeDeg: Math.round(latitude * 100) / 100,
  longitudeDeg: Math.round(longitude * 100) / 100,
})

/** The hourly variables asked for, with the unit that the answer must name. */
export const HOURLY = {
  precipitation: 'mm',
  temperature_2m: '°C',
  dew_point_2m: '°C',
  wind_speed_10m: 'm/s',
  wind_gusts_10m: 'm/s',
  shortwave_radiation: 'W/m²',
} as const

/** Days ahead that are asked for. */
const DAYS_AHEAD = 14

const UNITS = { temperature_unit: 'celsius', wind_speed_unit: 'ms', precipitation_unit: 'mm' } as const

/** The whole address of a question. The place is all that it tells of the club; times are asked for in UTC, so no clock change can come between. */
const addressOf = (base: string, place: PlaceSent, more: Readonly<Record<string, string>>): string => {
  const url = new URL(base)
  const parameters = {
    latitude: String(place.latitudeDeg),
    longitude: String(place.longitudeDeg),
    ...UNITS,
    timezone: 'GMT',
    ...more,
  }
  for (const [name, value] of Object.entries(parameters)) url.searchParams.set(name, value)
  return url.href
}

/** Asks for the hours of yesterday, since leaf and ground remember the rain, and of the days ahead. */
export const hourlyAddress = (provider: Provider, kind: 'forecast' | 'ensemble', place: PlaceSent): string =>
  addressOf(provider[kind], place, {
    hourly: Object.keys(HOURLY).join(','),
    past_days: '1',
    forecast_days: String(DAYS_AHEAD),
  })

/** Asks for daily weather of past years. */
export const archiveAddress = (
  provider: Provider,
  place: PlaceSent,
  days: { readonly from: string; readonly to: string },
): string =>
  addressOf(provider.archive, place, {
    daily: Object.values(ARCHIVE_VARIABLES)
      .map(({ name }) => name)
      .join(','),
    start_date: days.from,
    end_date: days.to,
  })
