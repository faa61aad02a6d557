import { computed, signal } from '@preact/signals'
import { readForecast } from '@swardwright/engine'
import type { KeptHistory, WeatherAnswer, WeatherKind } from '@swardwright/journal'
import { callServer } from '../journal/server.ts'
import { weatherShelf } from '../journal/weather-store.ts'
import { withTypedRain } from '../compute/typed-rain.ts'
import { realMs } from './clock.ts'
import { course } from './course.ts'
import { courseId, facts } from './journal.ts'
import { planNow } from './plan.ts'
import { record } from './record.ts'
import { weather } from './weather.ts'

const shelf = weatherShelf()

/** What the server told last of each kind, or what this device has kept of it. */
const served = { forecast: signal<WeatherAnswer | null>(null), ensemble: signal<WeatherAnswer | null>(null) }

/** The server’s word on the weather ahead. */
export const servedForecast = served.forecast

/** The daily record of the course; undefined before anybody has looked. */
export const history = signal<KeptHistory | null | undefined>(undefined)

/** True when the club’s own server did not answer the last time, so that what is shown is what this device has kept. */
export const serverAway = signal(false)

/** A phone asks for an ensemble, some megabytes, no sooner than the server would renew it. */
const ENSEMBLE_KEEPS_MS = 3 * 3_600_000

/** Asks the server for one kind, unless what is here came less than `keepsMs` ago. */
const fetchKind = async (id: string, kind: WeatherKind, keepsMs: number): Promise<void> => {
  const kept = await shelf
  served[kind].value ??= await kept.read(id, kind)
  const fetchedAt = served[kind].value?.fetchedAt ?? null
  // The page's clock ticks slowly and may lag behind the answer, which is then brand new.
  const ageMs = fetchedAt === null ? Infinity : Math.max(0, realMs.value - Date.parse(fetchedAt))
  if (ageMs < keepsMs) return
  const answer = await callServer('weather', { params: { course: id }, query: { kind } })
  serverAway.value = !answer.ok && answer.why === 'away'
  if (!answer.ok) return
  served[kind].value = answer.value
  await kept.keep(id, kind, answer.value)
}

/** Asks the server how the weather stands. The ensemble is only asked for where the weather is on. */
export const askWeather = async (): Promise<void> => {
  const id = courseId.value
  if (id === null) return
  await fetchKind(id, 'forecast', 0)
  if (served.forecast.value?.state !== 'off') await fetchKind(id, 'ensemble', ENSEMBLE_KEEPS_MS)
}

/** Asks the server for the record. */
export const askHistory = async (): Promise<void> => {
  const id = courseId.value
  if (id === null) return
  const kept = await shelf
  history.value ??= await kept.read(id, 'history')
  const answer = await callServer('history', { params: { course: id }, query: {} })
  serverAway.value = !answer.ok && answer.why === 'away'
  if (!answer.ok) return
  history.value = answer.value.history
  await kept.keep(id, 'history', answer.value.history)
}

/** Lets the server ask the weather service for this course, or forbids it. Answers with a sentence, without a full stop, when it would not hear of it. */
export const letWeatherBeAsked = async (on: boolean): Promise<string | null> => {
  const id = courseId.value
  if (id === null) return null
  const answer = await callServer('chooseWeather', { params: { course: id }, body: { on } })
  if (!answer.ok) return answer.why === 'away' ? 'the club’s server can’t be reached now' : answer.words
  await askWeather()
  return null
}

const readServed = computed(() => {
  const answer = served.forecast.value
  return answer === null || answer.forecast === null ? null : readForecast(answer.forecast)
})

/** The many forecasts at once, where there are any. */
export const ensemble = computed(() => {
  const answer = served.ensemble.value
  if (answer === null || answer.forecast === null) return null
  const read = readForecast(answer.forecast)
  return read.ok && read.value.weather.members > 1 ? read.value.weather : null
})

/** When the answer of the service came, epoch ms; null while there is none. */
const servedMs = computed(() => {
  const fetchedAt = served.forecast.value?.fetchedAt ?? null
  return fetchedAt === null ? null : Date.parse(fetchedAt)
})

/** True when the service has told something since the forecast that plans go by was taken down. */
export const isNewer = computed(() => {
  const [ms, read] = [servedMs.value, readServed.value]
  if (ms === null || read === null || !read.ok) return false
  const inForce = facts.value.forecast
  return inForce === null || ms > Date.parse(inForce.at)
})

/** The forecast that the weather page shows, as it was read: the service’s when it is newer, else the one that plans go by. */
export const shownForecast = computed(() => {
  if (isNewer.value) return readServed.value
  const inForce = facts.value.forecast
  return inForce === null ? null : readForecast(inForce.value.forecast)
})

/** The hours that the weather page shows. Rain typed in after the service’s answer lies over it. */
export const shownWeather = computed(() => {
  if (!isNewer.value) return weather.value
  const [ms, read] = [servedMs.value, readServed.value]
  const typed = facts.value.typedRain.filter(({ at }) => ms !== null && Date.parse(at) > ms)
  return withTypedRain(
    read !== null && read.ok ? read.value.weather : null,
    typed.map(({ value }) => value),
    course.value?.timeZone ?? 'UTC',
  )
})

/** Takes the service’s forecast down as the one that plans go by, and plans again. */
export const goByServed = async (): Promise<void> => {
  const answer = served.forecast.value
  if (answer === null || answer.forecast === null) return
  await record('forecastReceived', {
    source: 'service',
    ...(answer.provider === null ? {} : { name: answer.provider }),
    forecast: answer.forecast,
  })
  await planNow()
}
