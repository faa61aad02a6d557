import type { Check } from '../catalogue/item.ts'

type Row = readonly [place: string, latitudeDeg: number, longitudeDeg: number, date: string]
type Times = {
  readonly civilDawn: string
  readonly sunrise: string
  readonly sunset: string
  readonly civilDusk: string
}

/** Rows of the one-day tables, UTC. Their minute is rounded, and the algorithm is good to 0.6 min, so 1 minute is accepted. */
const USNO: readonly (readonly [Row, Times])[] = [
  [
    ['Stockholm', 59.32938, 18.06871, '2026-03-20'],
    { civilDawn: '04:09', sunrise: '04:50', sunset: '17:02', civilDusk: '17:43' },
  ],
  [
    ['Kyiv', 50.45466, 30.5238, '2026-06-21'],
    { civilDawn: '01:01', sunrise: '01:46', sunset: '18:13', civilDusk: '18:59' },
  ],
  [
    ['Kyiv', 50.45466, 30.5238, '2026-12-21'],
    { civilDawn: '05:17', sunrise: '05:56', sunset: '13:56', civilDusk: '14:35' },
  ],
  [
    ['Istanbul', 41.01384, 28.94966, '2026-06-21'],
    { civilDawn: '01:58', sunrise: '02:32', sunset: '17:40', civilDusk: '18:14' },
  ],
  [
    ['Ushuaia', -54.81084, -68.31591, '2026-06-21'],
    { civilDawn: '12:14', sunrise: '12:59', sunset: '20:11', civilDusk: '20:57' },
  ],
]

const hours = (clock: string): number => Number(clock.slice(0, 2)) + Number(clock.slice(3)) / 60

/** Published rows for `daylight.sun`. */
export const DAYLIGHT_CHECKS: readonly Check[] = USNO.flatMap(
  ([[place, latitudeDeg, longitudeDeg, date], times]) =>
    Object.entries(times).map(([event, clock]) => ({
      id: `${place}-${date}-${event}`,
      class: 'published' as const,
      source: 'usnoSunTables' as const,
      where: `one-day table of ${place}, ${date}: ${event} ${clock} UTC`,
      input: { date, latitudeDeg, longitudeDeg },
      output: `utcHours.${event}`,
      expected: hours(clock),
      tolerance: 1 / 60,
    })),
)
