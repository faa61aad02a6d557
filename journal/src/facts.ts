import type { Course, Plan, Prescription } from '@swardwright/engine'
import type { ChangeError } from './applyCourseChange.ts'
import type { BodyOf } from './kinds.ts'

/** Something recorded, with the entry that says so. `at` is as the entry wrote it. */
export type Recorded<T> = {
  readonly entry: string
  readonly author: string
  readonly at: string
  readonly value: T
}

/** A reported problem; `solved` is the entry that ended it. */
export type Problem = Recorded<BodyOf<'problemReported'>> & {
  readonly solved: Recorded<BodyOf<'problemSolved'>> | null
}

/** A spell of rain as it was seen; `ended` null while it lasts. */
export type RainSpell = {
  readonly began: string
  readonly ended: string | null
  readonly mmPerH: number | null
}

/** A change of the course that had nothing to work on. */
export type SetAside = { readonly entry: string; readonly error: ChangeError }

/** All that the entries of one course say, once struck entries are left out. */
export type Facts = {
  /** The course; null until it is set up. */
  readonly course: Course | null
  /** The prescription in force. */
  readonly prescription: Recorded<Prescription> | null
  /** The plan in force. */
  readonly plan: Recorded<Plan> | null
  /** The latest forecast, in its open hourly shape. */
  readonly forecast: Recorded<BodyOf<'forecastReceived'>> | null
  /** Rain typed in since that forecast, oldest first: of two that name one day the later counts. */
  readonly typedRain: readonly Recorded<BodyOf<'rainTyped'>>[]
  readonly tasksStarted: readonly Recorded<BodyOf<'taskStarted'>>[]
  readonly tasksStopped: readonly Recorded<BodyOf<'taskStopped'>>[]
  readonly tasksFinished: readonly Recorded<BodyOf<'taskFinished'>>[]
  readonly greensFinished: readonly Recorded<BodyOf<'greenFinished'>>[]
  readonly runsDriven: readonly Recorded<BodyOf<'runsDriven'>>[]
  readonly problems: readonly Problem[]
  readonly rain: readonly RainSpell[]
  readonly deliveries: readonly Recorded<BodyOf<'deliveryReceived'>>[]
  readonly stockUsed: readonly Recorded<BodyOf<'stockUsed'>>[]
  readonly measures: readonly Recorded<BodyOf<'measureTaken'>>[]
  readonly photos: readonly Recorded<BodyOf<'photoTaken'>>[]
  readonly noticesSent: readonly Recorded<BodyOf<'noticeSent'>>[]
  readonly playChanges: readonly Recorded<BodyOf<'playChanged'>>[]
  readonly accessChanges: readonly Recorded<BodyOf<'accessChanged'>>[]
  readonly notes: readonly Recorded<BodyOf<'noteWritten'>>[]
  readonly setAside: readonly SetAside[]
}

/** What is known before the first entry. */
export const NO_FACTS: Facts = {
  course: null,
  prescription: null,
  plan: null,
  forecast: null,
  typedRain: [],
  tasksStarted: [],
  tasksStopped: [],
  tasksFinished: [],
  greensFinished: [],
  runsDriven: [],
  problems: [],
  rain: [],
  deliveries: [],
  stockUsed: [],
  measures: [],
  photos: [],
  noticesSent: [],
  playChanges: [],
  accessChanges: [],
  notes: [],
  setAside: [],
}
