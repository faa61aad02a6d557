import { applyCourseChange } from './applyCourseChange.ts'
import type { Facts, Problem, Recorded } from './facts.ts'
import type { BodyOf, KnownEntry } from './kinds.ts'

/** Facts under construction, private to one fold: lists are its own copies, so entries can be added without copying for each. */
export type FactsDraft = {
  -readonly [K in keyof Facts]: Facts[K] extends readonly (infer T)[] ? T[] : Facts[K]
}

/** A copy to work on; the facts given stay as they are. */
export const openDraft = (facts: Facts): FactsDraft => ({
  ...facts,
  typedRain: [...facts.typedRain],
  tasksStarted: [...facts.tasksStarted],
  tasksStopped: [...facts.tasksStopped],
  tasksFinished: [...facts.tasksFinished],
  greensFinished: [...facts.greensFinished],
  runsDriven: [...facts.runsDriven],
  problems: [...facts.problems],
  rain: [...facts.rain],
  deliveries: [...facts.deliveries],
  stockUsed: [...facts.stockUsed],
  measures: [...facts.measures],
  photos: [...facts.photos],
  noticesSent: [...facts.noticesSent],
  playChanges: [...facts.playChanges],
  accessChanges: [...facts.accessChanges],
  notes: [...facts.notes],
  setAside: [...facts.setAside],
})

const recorded = <T>(entry: KnownEntry, value: T): Recorded<T> => ({
  entry: entry.id,
  author: entry.author,
  at: entry.at,
  value,
})

const changeCourse = (draft: FactsDraft, entry: KnownEntry, { changes }: BodyOf<'courseChanged'>): void => {
  for (const change of changes) {
    const changed = applyCourseChange(draft.course, change)
    if (changed.ok) draft.course = changed.value
    else draft.setAside.push({ entry: entry.id, error: changed.error })
  }
}

const solveProblem = (draft: FactsDraft, entry: KnownEntry, body: BodyOf<'problemSolved'>): void => {
  const index = draft.problems.findIndex((problem) => problem.entry === body.problem)
  const found: Problem | undefined = draft.problems[index]
  if (found !== undefined && found.solved === null)
    draft.problems[index] = { ...found, solved: recorded(entry, body) }
}

/** Rain that began again before it ended is the same spell; rain that ends without having begun is no spell. */
const beginRain = (draft: FactsDraft, entry: KnownEntry, body: BodyOf<'rainBegan'>): void => {
  const last = draft.rain.at(-1)
  if (last === undefined || last.ended !== null)
    draft.rain.push({ began: entry.at, ended: null, mmPerH: body.mmPerH ?? null })
}

const endRain = (draft: FactsDraft, entry: KnownEntry): void => {
  const last = draft.rain.at(-1)
  if (last !== undefined && last.ended === null)
    draft.rain[draft.rain.length - 1] = { ...last, ended: entry.at }
}

/** Kinds that only lengthen a list. */
type Listed = Exclude<
  KnownEntry,
  {
    readonly kind:
      | 'courseChanged'
      | 'prescriptionSettled'
      | 'planSettled'
      | 'forecastReceived'
      | 'rainTyped'
      | 'problemReported'
      | 'problemSolved'
      | 'rainBegan'
      | 'rainEnded'
      | 'struck'
  }
>

const list = (draft: FactsDraft, entry: Listed): number => {
  switch (entry.kind) {
    case 'taskStarted':
      return draft.tasksStarted.push(recorded(entry, entry.body))
    case 'taskStopped':
      return draft.tasksStopped.push(recorded(entry, entry.body))
    case 'taskFinished':
      return draft.tasksFinished.push(recorded(entry, entry.body))
    case 'greenFinished':
      return draft.greensFinished.push(recorded(entry, entry.body))
    case 'runsDriven':
      return draft.runsDriven.push(recorded(entry, entry.body))
    case 'deliveryReceived':
      return draft.deliveries.push(recorded(entry, entry.body))
    case 'stockUsed':
      return draft.stockUsed.push(recorded(entry, entry.body))
    case 'measureTaken':
      return draft.measures.push(recorded(entry, entry.body))
    case 'photoTaken':
      return draft.photos.push(recorded(entry, entry.body))
    case 'noticeSent':
      return draft.noticesSent.push(recorded(entry, entry.body))
    case 'playChanged':
      return draft.playChanges.push(recorded(entry, entry.body))
    case 'accessChanged':
      return draft.accessChanges.push(recorded(entry, entry.body))
    case 'noteWritten':
      return draft.notes.push(recorded(entry, entry.body))
  }
}

/** Takes one entry that stands into the draft. Called in the order of the fold. */
export const evolve = (draft: FactsDraft, entry: KnownEntry): void => {
  switch (entry.kind) {
    case 'courseChanged':
      return changeCourse(draft, entry, entry.body)
    case 'prescriptionSettled':
      draft.prescription = recorded(entry, entry.body.prescription)
      return
    case 'planSettled':
      draft.plan = recorded(entry, entry.body.plan)
      return
    case 'forecastReceived':
      draft.forecast = recorded(entry, entry.body)
      draft.typedRain = []
      return
    case 'rainTyped':
      draft.typedRain.push(recorded(entry, entry.body))
      return
    case 'problemReported':
      draft.problems.push({ ...recorded(entry, entry.body), solved: null })
      return
    case 'problemSolved':
      return solveProblem(draft, entry, entry.body)
    case 'rainBegan':
      return beginRain(draft, entry, entry.body)
    case 'rainEnded':
      return endRain(draft, entry)
    case 'struck':
      return
    default:
      list(draft, entry)
  }
}
