import { randomBytes } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { readCourse, readForecastText, readPrescription } from '@swardwright/engine'
import {
  KINDS,
  UUID_RANDOM_BYTES,
  judgeEntry,
  momentFromMs,
  uuidV7,
  type BodyOf,
  type Entry,
  type KindName,
} from '@swardwright/journal'
import type { ArrivingEntry, Storage } from './storage/storage.ts'

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

type Seed = { readonly [K in KindName]: { readonly kind: K; readonly body: BodyOf<K> } }[KindName]

const demoEntry = (course: string, seed: Seed, atMs: number): Entry => {
  const at = momentFromMs(atMs)
  return {
    id: uuidV7({ nowMs: atMs, random: randomBytes(UUID_RANDOM_BYTES) }),
    course,
    device: 'server',
    author: 'Swardwright',
    at,
    recordedAt: at,
    kind: seed.kind,
    version: KINDS[seed.kind].version,
    body: { ...seed.body },
  }
}

/** The entries are judged like anybody's, so the demo never holds what a device could not have sent. */
const arriving = (entry: Entry, nowMs: number): ArrivingEntry => {
  const judged = judgeEntry(entry, { course: entry.course, role: 'manager', nowMs })
  if (!judged.ok) throw new Error(`the demo has an entry that is refused: ${JSON.stringify(judged.error)}`)
  return { entry: judged.value, receivedAt: momentFromMs(nowMs), sender: 'server' }
}

/**
 * Makes the demo course with its forecast and prescription where nothing is kept yet, and finishes one that was cut short.
 * Resolves to true when it made something.
 */
export const plantDemo = async ({ journal }: Storage, nowMs: number): Promise<boolean> => {
  const course = await demoCourse()
  const courses = await journal.courses()
  const isEmpty = courses.length === 0
  const wasCutShort = courses.some(({ id }) => id === course.id) && (await journal.end(course.id)) === null
  if (!isEmpty && !wasCutShort) return false
  const seeds: readonly Seed[] = [
    { kind: 'courseChanged', body: { changes: [{ part: 'course', do: 'put', value: course }] } },
    { kind: 'forecastReceived', body: await demoForecast() },
    { kind: 'prescriptionSettled', body: { prescription: await demoPrescription() } },
  ]
  await journal.addCourse({ id: course.id, name: course.name })
  const entries = seeds.map((seed, index) => arriving(demoEntry(course.id, seed, nowMs + index), nowMs))
  await journal.append(course.id, entries, null)
  return true
}
