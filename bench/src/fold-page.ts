import { fold, initialState, type Entry } from '@swardwright/journal'
import { plainReduce } from './plain-reduce.ts'

let entries: readonly Entry[] = []

/** Takes the diary, JSON text, in. Each entry is cloned for itself, as the browser's database hands it out. */
export const take = (diary: string): void => {
  const read: readonly Entry[] = JSON.parse(diary)
  entries = read.map((entry) => structuredClone(entry))
}

const tookMs = (work: () => unknown): number => {
  const before = performance.now()
  work()
  return performance.now() - before
}

/** What may be timed: the fold, and the plain reduce beside it. Each says how long it took this time, ms on the wall. */
export const timed = {
  fold: (): number => tookMs(() => fold(initialState, entries)),
  plainReduce: (): number => tookMs(() => plainReduce(entries)),
}
