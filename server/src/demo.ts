import { readFile } from 'node:fs/promises'
import { readCourse, readForecastText, readPrescription } from '@swardwright/engine'
import type { BodyOf } from '@swardwright/journal'
import { serverEntry, type Seed } from './serverEntry.ts'
import type { CourseRow, Storage } from './storage/storage.ts'

/** Where the demo lies, seen from `src` and from `dist` alike. */
const EXAMPLES = new URL('../../examples/', import.meta.url)

const textOf = (file: string): Promise<string> => readFile(new URL(file, EXAMPLES), 'utf8')

/** The demo files come with the project, so one that can't be read is our fault: it throws. */
const demoCourse = async () => {
  const read = readCourse(await textOf('demo-course.geojson'))
  if (!read.ok) throw new Error(`the demo course can't be read: ${JSON.stringify(read.error)}`)
  return read.value.course
}

const demoForecast = async (): Promise<BodyOf<'forecastReceived'>> => {
  const text = await textOf('demo-forecast.json')
  const read = readForecastText(text)
  if (!read.ok) throw new Error(`the demo forecast can't be read: ${JSON.stringify(read.error)}`)
  const forecast: BodyOf<'forecastReceived'>['forecast'] = JSON.parse(text)
  return { source: 'file', name: 'demo-forecast.json', forecast }
}

const demoPrescription = async () => {
  const read = readPrescription(await textOf('demo-prescription.json'))
  if (!read.ok) throw new Error(`the demo prescription can't be read: ${JSON.stringify(read.error)}`)
  return read.value
}

/** Makes a course of the demo's greens, forecast and prescription, or finishes one that was cut short. */
export const plantDemoAs = async (
  { journal }: Pick<Storage, 'journal'>,
  { id, name }: CourseRow,
  nowMs: number,
): Promise<void> => {
  const value = { ...(await demoCourse()), id, name }
  const seeds: readonly Seed[] = [
    { kind: 'courseChanged', body: { changes: [{ part: 'course', do: 'put', value }] } },
    { kind: 'forecastReceived', body: await demoForecast() },
    { kind: 'prescriptionSettled', body: { prescription: await demoPrescription() } },
  ]
  await journal.addCourse({ id, name })
  const entries = seeds.map((seed, index) =>
    serverEntry(id, seed, { author: 'Swardwright', atMs: nowMs + index }),
  )
  await journal.append(id, entries, null)
}

/**
 * Makes the demo course where nothing is kept yet, and finishes one that was cut short.
 * Resolves to true when it made something.
 */
export const plantDemo = async ({ journal }: Storage, nowMs: number): Promise<boolean> => {
  const course = await demoCourse()
  const courses = await journal.courses()
  const isEmpty = courses.length === 0
  const wasCutShort = courses.some(({ id }) => id === course.id) && (await journal.end(course.id)) === null
  if (!isEmpty && !wasCutShort) return false
  await plantDemoAs({ journal }, course, nowMs)
  return true
}
