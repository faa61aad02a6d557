import { HOUR_MS, weatherOfCourse, type Course, type DayAhead, type WeatherHours } from '@swardwright/engine'
import { decimal, shareWords, type HourBars } from '@swardwright/present'
import type { Chances } from '../../compute/climate.ts'

/** Wind that fills a bar, m/s: a gale keeps everybody in. */
const FULL_WIND_M_PER_S = 14

const slice = (
  column: Float64Array,
  startMs: number,
  day: Pick<DayAhead, 'fromMs' | 'toMs'>,
): readonly (number | null)[] =>
  Array.from({ length: Math.round((day.toMs - day.fromMs) / HOUR_MS) }, (_, h) => {
    const value = column[Math.round((day.fromMs - startMs) / HOUR_MS) + h] ?? NaN
    return Number.isNaN(value) ? null : value
  })

const chanceBars = (id: string, label: string, values: readonly (number | null)[]): HourBars => ({
  id,
  label,
  values,
  top: 1,
  words: (share) => shareWords(share, 0),
  figure: (share) => decimal(share * 100, 0),
})

/** From where wind is care and stop: only where sand is thrown by a spinner. */
const windLimits = (course: Course): Pick<HourBars, 'careFrom' | 'stopFrom'> => {
  const judged = weatherOfCourse(course)
  return judged.ok && judged.value.stopsOf.dress.includes('wind')
    ? {
        careFrom: judged.value.settings.spinnerWindCautionMPerS,
        stopFrom: judged.value.settings.spinnerWindStopMPerS,
      }
    : {}
}

/** What the rows of bars are made of. */
type BarsInput = {
  readonly course: Course
  readonly weather: WeatherHours | null
  readonly day: Pick<DayAhead, 'fromMs' | 'toMs'>
  readonly chances: Chances | null
  /** Short name of the window row. */
  readonly windowWords: string
}

/** Rows of bars under the sky of a day: wind, and where there is an ensemble the chances of rain and of time enough. */
export const barsOfDay = ({ course, weather, day, chances, windowWords }: BarsInput): readonly HourBars[] => {
  const wind =
    weather === null ? [] : slice(weather.windMPerS.subarray(0, weather.hours), weather.startMs, day)
  return [
    ...(wind.some((value) => value !== null)
      ? [
          {
            id: 'wind',
            label: 'wind m/s',
            values: wind,
            top: FULL_WIND_M_PER_S,
            ...windLimits(course),
            words: (speed: number) => `${decimal(speed, 0)} m/s`,
            figure: (speed: number) => decimal(speed, 0),
          },
        ]
      : []),
    ...(chances === null
      ? []
      : [
          chanceBars('rainChance', 'rain, %', slice(chances.rain, chances.startMs, day)),
          {
            ...chanceBars('windowChance', windowWords, slice(chances.window, chances.startMs, day)),
            isGood: true,
          },
        ]),
  ]
}
