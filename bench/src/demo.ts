import { readFileSync } from 'node:fs'
import {
  readCourse,
  readForecastText,
  readPrescription,
  type Course,
  type Prescription,
  type WeatherHours,
} from '@swardwright/engine'

/** The demo course as the app opens it: what a plan of its week is made from. */
export type Demo = {
  readonly course: Course
  readonly prescription: Prescription
  readonly weather: WeatherHours
  /** First day of work. */
  readonly start: string
}

const START = '2026-08-10'

const textOf = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}`, import.meta.url), 'utf8')

/** Opens the demo. It comes with the project, so a file that does not read is our fault: it throws. */
export const openDemo = (): Demo => {
  const course = readCourse(textOf('demo-course.geojson'))
  const prescription = readPrescription(textOf('demo-prescription.json'))
  const forecast = readForecastText(textOf('demo-forecast.json'))
  if (!course.ok || !prescription.ok || !forecast.ok) throw new Error('the demo files do not read')
  return {
    course: course.value.course,
    prescription: prescription.value,
    weather: forecast.value.weather,
    start: START,
  }
}
