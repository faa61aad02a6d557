import { computed } from '@preact/signals'
import { readForecast } from '@swardwright/engine'
import { withTypedRain } from '../compute/typed-rain.ts'
import { facts } from './journal.ts'

// Apart, so that it is not read anew, nor a plan checked anew, for every other entry.
const received = computed(() => facts.value.forecast)

/** The forecast in force as it was read, or what was wrong with it; null while there is none. */
export const forecast = computed(() => {
  const last = received.value
  return last === null ? null : readForecast(last.value.forecast)
})

/** Hours of weather that plans go by: the forecast, with the rain that was typed in over it. Null while nothing is known. */
export const weather = computed(() => {
  const read = forecast.value
  const hours = read !== null && read.ok ? read.value.weather : null
  const typed = facts.value.typedRain.map((one) => one.value)
  return withTypedRain(hours, typed, facts.value.course?.timeZone ?? 'UTC')
})
