import type { ForecastError } from '@swardwright/engine'

/** One clear sentence, without a full stop, for why a forecast can't be used. */
export const forecastErrorWords = (error: ForecastError): string => {
  switch (error.type) {
    case 'notJson':
      return error.length === 0
        ? 'the forecast is empty'
        : 'the forecast is not JSON, or only half of it arrived'
    case 'refused':
      return `the weather service refused: ${error.reason}`
    case 'wrongShape':
      return `${error.field} of the forecast is ${error.received}; it must be ${error.expected}`
    case 'noColumns':
      return `the forecast has no column that is known; it needs at least one of ${error.accepted.join(', ')}`
    case 'badTime':
      return `hourly.time[${error.row}] is ${error.received}; it must be a time such as 2026-08-10T06:00`
    case 'unknownTimeZone':
      return `the forecast's time zone '${error.received}' is not known; give one such as Europe/London`
    case 'notHourly':
      return `hourly.time[${error.row}] is ${error.received}; times must be full hours, one after the other`
    case 'tooLong':
      return `the forecast spans ${error.hours} hours; at most ${error.max} are read`
    case 'unknownUnit':
      return `the unit of ${error.field} is '${error.received}'; it must be one of ${error.accepted.join(', ')}`
    case 'columnTooLong':
      return `hourly.${error.field} has ${error.length} values for ${error.expected} times`
    case 'notAColumn':
      return `hourly.${error.field} must be a list of numbers`
  }
}
