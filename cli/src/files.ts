import { fileURLToPath } from 'node:url'
import {
  courseFromCsv,
  readCourse,
  readForecastText,
  readPlan,
  readPrescription,
  type Course,
  type CourseError,
  type PlanToCheck,
  type Prescription,
  type Result,
  type WeatherHours,
} from '@swardwright/engine'
import { courseErrorSentence, forecastErrorWords } from '@swardwright/present'
import { BadInput, type Io } from './command.ts'

/** The demo course that comes with the project. */
export const DEMO_COURSE = fileURLToPath(new URL('../../examples/demo-course.geojson', import.meta.url))

/** What the demo prescribes, and the normals of its weather. */
export const DEMO_PRESCRIPTION = fileURLToPath(
  new URL('../../examples/demo-prescription.json', import.meta.url),
)
export const DEMO_NORMALS = fileURLToPath(new URL('../../examples/demo-normals.json', import.meta.url))

const opened = <T>(path: string, read: Result<T, CourseError>): T => {
  if (read.ok) return read.value
  throw new BadInput(`${path}: ${courseErrorSentence(read.error)}`)
}

/** A course file: GeoJSON, or a plain list of greens and areas where the name ends in .csv. With what was taken for granted. */
export const openCourse = async (
  io: Io,
  path: string,
): Promise<{ readonly course: Course; readonly assumed: readonly string[] }> => {
  const text = await io.readFile(path)
  return opened(path, /\.(csv|tsv|txt)$/iu.test(path) ? courseFromCsv(text) : readCourse(text))
}

/** A prescription file. */
export const openPrescription = async (io: Io, path: string): Promise<Prescription> =>
  opened(path, readPrescription(await io.readFile(path)))

/** A plan file. */
export const openPlan = async (io: Io, path: string): Promise<PlanToCheck> =>
  opened(path, readPlan(await io.readFile(path)))

/** A forecast in the open hourly shape; null when none is given. */
export const openForecast = async (io: Io, path: string | undefined): Promise<WeatherHours | null> => {
  if (path === undefined) return null
  const forecast = readForecastText(await io.readFile(path))
  if (forecast.ok) return forecast.value.weather
  throw new BadInput(`${path}: ${forecastErrorWords(forecast.error)}`)
}
