export { CATALOGUE, calculate, findItem } from './catalogue/catalogue.ts'
export { addDays, instantOf, isoWithOffset, isTimeZone, localOf, type LocalTime } from './time/zone.ts'
export { dateOfDay, dayNumber, dayOfYear } from './time/calendar.ts'
export { HOUR_MS, type WeatherHours } from './weather/hours.ts'
