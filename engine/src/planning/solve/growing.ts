import type { ScheduledTask, Span } from '../problem.ts'
import type { Ground } from './ground.ts'
import { book, emptyDiary, unbook, type Diary } from './people.ts'

/** Sand taken from the bays: when, how much, of which kind. */
type Draw = { readonly kind: 'damp' | 'kilnDried'; readonly atMin: number; readonly massT: number }

/** Where a machine stands after its last task so far. */
export type MachineState = {
  readonly freeMin: number
  readonly place: number
  /** Day (index) of its last task; on a later day it starts from the shed and must be set up. -1: not used yet. */
  readonly day: number
  /** Who worked it last; -1: nobody yet. Keeping that person keeps the post. */
  readonly holder: number
}

/** A green in work. */
export type InWork = { readonly green: number; readonly start: number; readonly end: number }

/** A schedule while it grows. Changed in place; `mark` and `backTo` undo a try. */
export type Growing = {
  readonly ground: Ground
  readonly tasks: ScheduledTask[]
  readonly machines: MachineState[]
  readonly diaries: readonly Diary[]
  readonly draws: Draw[]
  readonly inWork: InWork[]
  /** What to put back, newest last. */
  readonly machineLog: { readonly machine: number; readonly before: MachineState }[]
  readonly peopleLog: { readonly person: number; readonly start: number }[]
}

/** An empty schedule. */
export const emptySchedule = (ground: Ground): Growing => ({
  ground,
  tasks: [],
  machines: ground.problem.machines.map(() => ({ freeMin: 0, place: 0, day: -1, holder: -1 })),
  diaries: ground.problem.people.map(emptyDiary),
  draws: [],
  inWork: [],
  machineLog: [],
  peopleLog: [],
})

/** A point to come back to. */
export type Mark = {
  readonly tasks: number
  readonly draws: number
  readonly inWork: number
  readonly machines: number
  readonly people: number
}

/** Remembers how far the schedule has grown. */
export const mark = (growing: Growing): Mark => ({
  tasks: growing.tasks.length,
  draws: growing.draws.length,
  inWork: growing.inWork.length,
  machines: growing.machineLog.length,
  people: growing.peopleLog.length,
})

/** Drops the end of a list. Setting its length would give the room back and have it asked for again at the next push. */
const shorten = (list: unknown[], length: number): void => {
  while (list.length > length) list.pop()
}

/** Takes back everything since the mark. */
export const backTo = (growing: Growing, to: Mark): void => {
  shorten(growing.tasks, to.tasks)
  shorten(growing.draws, to.draws)
  shorten(growing.inWork, to.inWork)
  for (let i = growing.machineLog.length - 1; i >= to.machines; i--) {
    const entry = growing.machineLog[i]
    if (entry !== undefined) growing.machines[entry.machine] = entry.before
  }
  shorten(growing.machineLog, to.machines)
  for (let i = growing.peopleLog.length - 1; i >= to.people; i--) {
    const entry = growing.peopleLog[i]
    const diary = entry === undefined ? undefined : growing.diaries[entry.person]
    if (entry !== undefined && diary !== undefined) unbook(diary, entry.start)
  }
  shorten(growing.peopleLog, to.people)
}

/** Moves a machine on. */
export const setMachine = (growing: Growing, machine: number, after: MachineState): void => {
  const before = growing.machines[machine]
  if (before === undefined) return
  growing.machineLog.push({ machine, before })
  growing.machines[machine] = after
}

/** Books a person. */
export const bookPerson = (growing: Growing, person: number, span: Span, from: number, to: number): void => {
  const diary = growing.diaries[person]
  if (diary === undefined) return
  book(diary, span.start, span.end, from, to)
  growing.peopleLog.push({ person, start: span.start })
}
