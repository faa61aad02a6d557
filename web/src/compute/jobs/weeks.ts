import { reckonWeeks, usualYears, type PastWeather } from '@swardwright/engine'
import { recordOf } from '../climate.ts'
import type { Doing } from '../work.ts'

export const weeks: Doing<'weeks'> = ({ history, ...wanted }, onProgress) => {
  const past: PastWeather =
    history === null
      ? usualYears(wanted.course, wanted.years, wanted.seed)
      : { record: recordOf(history), station: history.station, source: 'record' }
  return reckonWeeks({ ...wanted, past }, onProgress)
}
