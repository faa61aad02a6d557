import type { WeatherHours } from './hours.ts'

const COLUMNS = ['rainMm', 'temperatureC', 'dewPointC', 'windMPerS', 'gustMPerS', 'radiationWPerM2'] as const

const columnsBy = (
  read: (column: (typeof COLUMNS)[number]) => Float64Array,
): Pick<WeatherHours, (typeof COLUMNS)[number]> => ({
  rainMm: read('rainMm'),
  temperatureC: read('temperatureC'),
  dewPointC: read('dewPointC'),
  windMPerS: read('windMPerS'),
  gustMPerS: read('gustMPerS'),
  radiationWPerM2: read('radiationWPerM2'),
})

/** One member of an ensemble as a plain forecast, on the same memory. `member` counts from 0; throws where there is none such. */
export const memberOf = (weather: WeatherHours, member: number): WeatherHours => {
  if (!Number.isInteger(member) || member < 0 || member >= weather.members)
    throw new RangeError(`member ${member} of ${weather.members}`)
  const { startMs, hours } = weather
  return {
    startMs,
    hours,
    members: 1,
    ...columnsBy((column) => weather[column].subarray(member * hours, (member + 1) * hours)),
  }
}

/** Plain forecasts of the same hours as one ensemble, in the order given. Throws when there is none or they differ in their hours. */
export const joinMembers = (list: readonly WeatherHours[]): WeatherHours => {
  const [first] = list
  if (first === undefined) throw new RangeError('an ensemble has at least one member')
  const { startMs, hours } = first
  if (list.some((one) => one.members !== 1 || one.startMs !== startMs || one.hours !== hours))
    throw new RangeError('members of an ensemble cover the same hours')
  const join = (column: (typeof COLUMNS)[number]): Float64Array => {
    const whole = new Float64Array(list.length * hours)
    list.forEach((one, member) => whole.set(one[column], member * hours))
    return whole
  }
  return { startMs, hours, members: list.length, ...columnsBy(join) }
}
