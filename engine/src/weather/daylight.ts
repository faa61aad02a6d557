import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { calendarDate, DAY_MS, parseDate } from '../time/calendar.ts'
import { DAYLIGHT_CHECKS } from './daylight-checks.ts'
import { solarNoonNear, sunAltitudeDeg } from './sun.ts'

/** Height of the sun's centre at rise and set: 34' of refraction and a 16' radius (US Naval Observatory definition), degrees. */
const HORIZON_DEG = -0.833
/** Height of the sun's centre at the ends of civil twilight, degrees. */
const CIVIL_DEG = -6

/** Why a day has no such event. */
export type NoEvent = 'sunStaysUp' | 'sunStaysDown' | 'twilightAllNight' | 'darkAllDay'

/** One event: an instant, or the reason that there is none. */
export type SunEvent = { readonly atMs: number } | { readonly atMs: null; readonly because: NoEvent }

/** The four events round one solar noon. */
export type SunDay = {
  readonly noonMs: number
  readonly civilDawn: SunEvent
  readonly sunrise: SunEvent
  readonly sunset: SunEvent
  readonly civilDusk: SunEvent
}

/** Where the rising (or falling) altitude passes `heightDeg` between two instants, to 0.1 s. Regula falsi, Illinois form. */
const crossing = (altitude: (ms: number) => number, heightDeg: number, fromMs: number, toMs: number) => {
  let [a, b] = [fromMs, toMs]
  let [fa, fb] = [altitude(a) - heightDeg, altitude(b) - heightDeg]
  for (let i = 0; i < 60 && Math.abs(b - a) > 100; i++) {
    const c = b - (fb * (b - a)) / (fb - fa)
    const fc = altitude(c) - heightDeg
    if (Math.abs(fc) < 1e-5) return c
    if (fc * fb < 0) [a, fa] = [b, fb]
    else fa /= 2
    ;[b, fb] = [c, fc]
  }
  return b
}

/**
 * Sunrise, sunset and the ends of civil twilight round the solar noon that falls on the course's calendar day. In the far north in June a
 * sunset can come after midnight; it still belongs to the day whose noon it follows.
 * `day` counts from 1970-01-01; `offsetMs` is local time less UTC and only decides which noon is meant. Latitude north, longitude east.
 */
export const sunDay = (day: number, latitudeDeg: number, longitudeDeg: number, offsetMs: number): SunDay => {
  const noonMs = solarNoonNear(day * DAY_MS + DAY_MS / 2 - offsetMs, longitudeDeg)
  const altitude = (ms: number): number => sunAltitudeDeg(ms, latitudeDeg, longitudeDeg)
  const highest = altitude(noonMs)
  const event = (heightDeg: number, nightMs: number, never: NoEvent, always: NoEvent): SunEvent => {
    if (highest < heightDeg) return { atMs: null, because: never }
    if (altitude(nightMs) > heightDeg) return { atMs: null, because: always }
    return { atMs: crossing(altitude, heightDeg, nightMs, noonMs) }
  }
  const [before, after] = [noonMs - DAY_MS / 2, noonMs + DAY_MS / 2]
  return {
    noonMs,
    civilDawn: event(CIVIL_DEG, before, 'darkAllDay', 'twilightAllNight'),
    sunrise: event(HORIZON_DEG, before, 'sunStaysDown', 'sunStaysUp'),
    sunset: event(HORIZON_DEG, after, 'sunStaysDown', 'sunStaysUp'),
    civilDusk: event(CIVIL_DEG, after, 'darkAllDay', 'twilightAllNight'),
  }
}

const EVENTS = ['civilDawn', 'sunrise', 'sunset', 'civilDusk'] as const

const instant = (meaning: string) => v.pipe(v.nullable(v.string()), v.description(`${meaning}, UTC instant`))
const utcHour = (meaning: string) =>
  v.nullable(figure({ meaning: `${meaning}, hours after 00:00 UTC of the date`, unit: 'h' }))
const reason = v.optional(
  v.picklist(['sunStaysUp', 'sunStaysDown', 'twilightAllNight', 'darkAllDay'] satisfies NoEvent[]),
)

const outputs = v.object({
  civilDawn: instant('Start of civil twilight'),
  sunrise: instant('Sunrise'),
  sunset: instant('Sunset'),
  civilDusk: instant('End of civil twilight'),
  because: v.pipe(
    v.object({ civilDawn: reason, sunrise: reason, sunset: reason, civilDusk: reason }),
    v.description('For each event that the day does not have, why'),
  ),
  utcHours: v.object({
    civilDawn: utcHour('Start of civil twilight'),
    sunrise: utcHour('Sunrise'),
    sunset: utcHour('Sunset'),
    civilDusk: utcHour('End of civil twilight'),
  }),
})

const toTheSecond = (ms: number): string =>
  new Date(Math.round(ms / 1000) * 1000).toISOString().replace('.000', '')

/** `daylight.sun`: when the sun rises and sets on the course's calendar day. */
export const daylightSun = item({
  name: 'daylight.sun',
  title: 'Sunrise, sunset and twilight',
  words:
    'The sun rises when its upper edge shows over a flat horizon: its centre then stands 0.833 degrees under it. Civil twilight, light enough to work by, ends at 6 degrees under.',
  formula: 'sin h = sin(lat) sin(decl) + cos(lat) cos(decl) cos(H); solved for h = -0.833 and -6 degrees',
  evidence: 'handbook',
  sources: ['meeusAlgorithms1998', 'usnoSunTables'],
  notes: [
    'Within a minute of the published tables below 66 degrees of latitude. Hills, trees and the height of the green above the horizon are left out.',
    'The events belong to the solar noon of that calendar day. Without utcOffsetMinutes the calendar is that of the local meridian (4 minutes a degree of longitude).',
  ],
  inputs: v.object({
    date: calendarDate("The course's calendar day"),
    latitudeDeg: quantity({ meaning: 'Latitude, north positive', unit: 'deg', min: -90, max: 90 }),
    longitudeDeg: quantity({ meaning: 'Longitude, east positive', unit: 'deg', min: -180, max: 180 }),
    utcOffsetMinutes: v.optional(
      quantity({ meaning: 'Local time less UTC on that day', unit: 'min', min: -840, max: 840 }),
    ),
  }),
  outputs,
  checks: DAYLIGHT_CHECKS,
  run: ({ date, latitudeDeg, longitudeDeg, utcOffsetMinutes }) => {
    const day = parseDate('date', date)
    if (!day.ok) return day
    const offsetMin = utcOffsetMinutes ?? Math.round(longitudeDeg * 4)
    const sun = sunDay(day.value, latitudeDeg, longitudeDeg, offsetMin * 60_000)
    const each = <T>(read: (event: SunEvent) => T) =>
      ({
        civilDawn: read(sun.civilDawn),
        sunrise: read(sun.sunrise),
        sunset: read(sun.sunset),
        civilDusk: read(sun.civilDusk),
      }) satisfies Record<(typeof EVENTS)[number], T>
    const missing = EVENTS.flatMap((name) => {
      const event = sun[name]
      return event.atMs === null ? [[name, event.because] as const] : []
    })
    return ok({
      ...each(({ atMs }) => (atMs === null ? null : toTheSecond(atMs))),
      because: Object.fromEntries(missing),
      utcHours: each(({ atMs }) => (atMs === null ? null : (atMs - day.value * DAY_MS) / 3_600_000)),
    })
  },
})
