export { CATALOGUE, calculate, findItem } from './catalogue/catalogue.ts'
export { addDays, instantOf, isoWithOffset, isTimeZone, localOf, type LocalTime } from './time/zone.ts'
export { dateOfDay, dayNumber, dayOfYear } from './time/calendar.ts'
export { HOUR_MS, type WeatherHours } from './weather/hours.ts'
export { sunDay, type SunDay, type SunEvent } from './weather/daylight.ts'
export {
  lonLat,
  planeAt,
  type LocalPoint,
  type LonLat,
  type LonLatError,
  type Plane,
} from './ground/plane.ts'
export {
  distanceM,
  isOnGreen,
  polygonAreaM2,
  polygonCentroid,
  polygonPerimeterM,
  type Polygon,
  type Ring,
} from './ground/polygon.ts'
export { checkedPolygon } from './ground/checked-polygon.ts'
export type { OutlineError } from './ground/outline-error.ts'
export { equivalentEllipse, isPolygon, polygonOf, type AreaShape, type Shape } from './ground/ellipse.ts'
export { passTime, type PassTime, type PassTimeInput } from './ground/pass-time.ts'
export { readForecast, readForecastText, type Forecast, type ForecastError } from './weather/forecast.ts'
export type { Gap } from './weather/forecastColumns.ts'
