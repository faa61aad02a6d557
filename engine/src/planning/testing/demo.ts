import { readFileSync } from 'node:fs'
import { readCourse } from '../../course/read-course.ts'
import { courseHash } from '../../course/course-hash.ts'
import { readForecastText } from '../../weather/forecast.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import type { MakePlanInput } from '../make-plan.ts'
import { readPrescription } from '../read-files.ts'

const example = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), 'utf8')

/** The demo as the app opens it: course, forecast, prescription, first day of the forecast. */
export const demoInput = (): MakePlanInput => {
  const course = readCourse(example('demo-course.geojson'))
  const forecast = readForecastText(example('demo-forecast.json'))
  const prescription = readPrescription(example('demo-prescription.json'))
  if (!course.ok || !forecast.ok || !prescription.ok) throw new Error('the demo files do not read')
  return {
    course: course.value.course,
    courseHash: courseHash(course.value.course),
    prescription: prescription.value,
    weather: forecast.value.weather,
    start: '2026-08-10',
  }
}

/** The same weather with its rain brought forward by whole hours; everything else stays. */
export const rainEarlier = (weather: WeatherHours, hours: number): WeatherHours => ({
  ...weather,
  rainMm: weather.rainMm.map((_, h) => weather.rainMm[h + hours] ?? 0),
})
