/** One day of the demo's August: how cold at dawn and warm at three, how moist, cloudy and windy. */
type DemoDay = {
  readonly date: string
  readonly dawnC: number
  readonly warmestC: number
  readonly dawnDewPointC: number
  readonly noonDewPointC: number
  /** Cloud, %, at 00:00, 06:00, 12:00 and 18:00; between them straight lines. */
  readonly cloudPercent: readonly [number, number, number, number]
  /** Wind at 10 m, km/h, at the same hours. */
  readonly windKmPerH: readonly [number, number, number, number]
  /** Rain by the hour in which it falls: 15 is 15:00 to 16:00; mm. */
  readonly rainMm?: Readonly<Record<number, number>>
}

/** A dry Monday, rain from 15:00 on Tuesday, then dry days with sun and wind enough; dew in the still nights. */
const DAYS: readonly DemoDay[] = [
  {
    date: '2026-08-10',
    dawnC: 11.8,
    warmestC: 20.4,
    dawnDewPointC: 11.2,
    noonDewPointC: 11.8,
    cloudPercent: [20, 30, 45, 30],
    windKmPerH: [5, 6, 13, 10],
  },
  {
    date: '2026-08-11',
    dawnC: 13.1,
    warmestC: 18.2,
    dawnDewPointC: 12.2,
    noonDewPointC: 13.6,
    cloudPercent: [35, 60, 85, 100],
    windKmPerH: [8, 11, 18, 24],
    rainMm: { 15: 0.7, 16: 1.6, 17: 2.4, 18: 1.9, 19: 1.1, 20: 0.5, 21: 0.2 },
  },
  {
    date: '2026-08-12',
    dawnC: 12.3,
    warmestC: 18.8,
    dawnDewPointC: 11.4,
    noonDewPointC: 10.2,
    cloudPercent: [90, 45, 35, 30],
    windKmPerH: [17, 14, 19, 13],
  },
  {
    date: '2026-08-13',
    dawnC: 10.4,
    warmestC: 20.2,
    dawnDewPointC: 9.9,
    noonDewPointC: 10.8,
    cloudPercent: [15, 15, 25, 20],
    windKmPerH: [6, 5, 12, 9],
  },
  {
    date: '2026-08-14',
    dawnC: 11.0,
    warmestC: 21.8,
    dawnDewPointC: 10.4,
    noonDewPointC: 11.9,
    cloudPercent: [10, 10, 20, 15],
    windKmPerH: [5, 5, 11, 9],
  },
  {
    date: '2026-08-15',
    dawnC: 12.6,
    warmestC: 21.3,
    dawnDewPointC: 11.9,
    noonDewPointC: 12.6,
    cloudPercent: [25, 35, 40, 40],
    windKmPerH: [7, 7, 14, 12],
  },
  {
    date: '2026-08-16',
    dawnC: 13.4,
    warmestC: 19.1,
    dawnDewPointC: 12.5,
    noonDewPointC: 13.3,
    cloudPercent: [50, 70, 75, 90],
    windKmPerH: [9, 10, 17, 16],
    rainMm: { 19: 0.4, 20: 0.9, 21: 0.6 },
  },
  {
    date: '2026-08-17',
    dawnC: 12.2,
    warmestC: 19.5,
    dawnDewPointC: 11.5,
    noonDewPointC: 11.1,
    cloudPercent: [70, 50, 45, 40],
    windKmPerH: [12, 10, 15, 11],
  },
]

const LATITUDE_DEG = 53.71
const LONGITUDE_DEG = -4.92
const UTC_OFFSET_H = 1
const RAD = Math.PI / 180

const dayAt = (index: number): DemoDay => {
  const day = DAYS[Math.min(Math.max(index, 0), DAYS.length - 1)]
  if (day === undefined) throw new Error('the demo has no such day')
  return day
}

/** Between the coldest hour, 05:00, and the warmest, 15:00, along half a cosine; `hour` counts from the first midnight. */
const between = (hour: number, dawn: (day: DemoDay) => number, noon: (day: DemoDay) => number): number => {
  const day = Math.floor((hour - 5) / 24)
  const since = hour - 5 - 24 * day
  const isRising = since < 10
  const share = isRising ? since / 10 : (since - 10) / 14
  const from = isRising ? dawn(dayAt(day)) : noon(dayAt(day))
  const to = isRising ? noon(dayAt(day)) : dawn(dayAt(day + 1))
  return from + (to - from) * ((1 - Math.cos(Math.PI * share)) / 2)
}

const sixHourly = (hour: number, pick: (day: DemoDay) => readonly number[]): number => {
  const index = Math.floor(hour / 6)
  const at = (i: number): number => pick(dayAt(Math.floor(i / 4)))[i % 4] ?? 0
  return at(index) + (at(index + 1) - at(index)) * (hour / 6 - index)
}

/** Saturation vapour pressure, kPa: FAO-56 equation 11. */
const saturationKPa = (celsius: number): number => 0.6108 * Math.exp((17.27 * celsius) / (celsius + 237.3))

/** Sine of the sun's height at an hour of local clock; declination by FAO-56 equation 24. */
const sunSine = (hour: number): number => {
  const dayOfYear = 222 + Math.floor(hour / 24)
  const declination = 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39)
  const solarHour = (hour % 24) - UTC_OFFSET_H + LONGITUDE_DEG / 15
  const latitude = LATITUDE_DEG * RAD
  return (
    Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.cos((solarHour - 12) * 15 * RAD)
  )
}

/** Radiation under this much cloud, W/m2: clear sky after Haurwitz (1945), cloud after Kasten and Czeplak (1980). */
const radiationWPerM2 = (hour: number): number => {
  const sine = sunSine(hour)
  if (sine <= 0.01) return 0
  const cloud = sixHourly(hour, (day) => day.cloudPercent) / 100
  return 1098 * sine * Math.exp(-0.057 / sine) * (1 - 0.75 * cloud ** 3.4)
}

const tenth = (value: number): number => Math.round(value * 10) / 10

const HOURS = Array.from({ length: DAYS.length * 24 }, (_, hour) => hour)

const timeOf = (hour: number): string =>
  `${dayAt(Math.floor(hour / 24)).date}T${String(hour % 24).padStart(2, '0')}:00`

const temperatureC = (hour: number): number =>
  tenth(
    between(
      hour,
      (d) => d.dawnC,
      (d) => d.warmestC,
    ),
  )

const dewPointC = (hour: number): number =>
  Math.min(
    tenth(
      between(
        hour,
        (d) => d.dawnDewPointC,
        (d) => d.noonDewPointC,
      ),
    ),
    temperatureC(hour) - 0.1,
  )

/** The value told at an hour covers the hour before it. */
const rainMm = (hour: number): number =>
  hour === 0 ? 0 : (dayAt(Math.floor((hour - 1) / 24)).rainMm?.[(hour - 1) % 24] ?? 0)

const windKmPerH = (hour: number): number => tenth(sixHourly(hour, (day) => day.windKmPerH))

/** The demo's forecast in the open hourly shape: local times without offset, rain, gusts and radiation of the hour before. */
export const demoForecast = () => ({
  latitude: LATITUDE_DEG,
  longitude: LONGITUDE_DEG,
  elevation: 34,
  utc_offset_seconds: UTC_OFFSET_H * 3600,
  timezone: 'Europe/London',
  timezone_abbreviation: 'BST',
  hourly_units: {
    time: 'iso8601',
    temperature_2m: '°C',
    dew_point_2m: '°C',
    relative_humidity_2m: '%',
    precipitation: 'mm',
    wind_speed_10m: 'km/h',
    wind_gusts_10m: 'km/h',
    shortwave_radiation: 'W/m²',
    cloud_cover: '%',
  },
  hourly: {
    time: HOURS.map(timeOf),
    temperature_2m: HOURS.map(temperatureC),
    dew_point_2m: HOURS.map((hour) => tenth(dewPointC(hour))),
    relative_humidity_2m: HOURS.map((hour) =>
      Math.round((100 * saturationKPa(dewPointC(hour))) / saturationKPa(temperatureC(hour))),
    ),
    precipitation: HOURS.map(rainMm),
    wind_speed_10m: HOURS.map(windKmPerH),
    wind_gusts_10m: HOURS.map((hour) =>
      tenth(1.6 * Math.max(windKmPerH(hour), windKmPerH(Math.max(hour - 1, 0)))),
    ),
    shortwave_radiation: HOURS.map((hour) =>
      Math.round((radiationWPerM2(hour - 0.75) + radiationWPerM2(hour - 0.25)) / 2),
    ),
    cloud_cover: HOURS.map((hour) => Math.round(sixHourly(hour, (day) => day.cloudPercent))),
  },
})
