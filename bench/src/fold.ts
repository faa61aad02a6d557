import { extend, fold, initialState, snapshotOf, stateOf } from '@swardwright/journal'
import { entryAt, yearOf } from './fold-diary.ts'
import { measureFoldInBrowser, type InBrowser } from './fold-in-browser.ts'
import { plainReduce } from './plain-reduce.ts'
import { rounded } from './rounded.ts'

const ENTRIES = 50_000
const ROUNDS = 15

/** A phone's core is taken as a quarter of this one, as browsers' throttling does. */
const THROTTLE = 4
const GOAL_MS = 300

const processorMs = (work: () => unknown): number => {
  const before = process.cpuUsage()
  work()
  return process.cpuUsage(before).user / 1000
}

/** The least disturbed of some rounds: what else runs on the machine only ever adds. */
const leastMs = (work: () => unknown): number =>
  rounded(Math.min(...Array.from({ length: ROUNDS }, () => processorMs(work))), 1)

/** The diary folded from nothing, from a snapshot, and one entry more, in this process. */
const measureInNode = (entries: ReturnType<typeof yearOf>) => {
  const foldMs = leastMs(() => fold(initialState, entries))
  const plainReduceMs = leastMs(() => plainReduce(entries))
  const state = fold(initialState, entries)
  const kept = JSON.stringify(snapshotOf(state))
  const late = entryAt(ENTRIES, Date.UTC(2028, 0, 1), 'noteWritten', { words: 'one more' })
  const fromSnapshotMs = leastMs(() => {
    const begun = stateOf(JSON.parse(kept))
    if (begun === null || extend(begun, [late]) === null) throw new Error('the snapshot is of this version')
  })
  let grown = state
  const oneMoreMs = leastMs(() => {
    const next = entryAt(ENTRIES + grown.entries.length, Date.UTC(2028, 0, 1), 'noteWritten', { words: 'x' })
    grown = fold(grown, [next])
  })
  return { foldMs, plainReduceMs, fromSnapshotMs, oneMoreMs }
}

const browserLine = (name: string, { coldMs, medianColdMs, medianWarmMs }: InBrowser): string =>
  `${name}: ${medianColdMs.toFixed(0)} ms cold (${Math.min(...coldMs).toFixed(0)} to ${Math.max(...coldMs).toFixed(0)} over ${coldMs.length} fresh pages), ${medianWarmMs.toFixed(0)} ms warm`

/**
 * `bench fold [--json]`: a year's diary of 50,000 entries folded in a slowed-down browser, cold and warm, beside a plain reduce; and in this
 * process, also from a snapshot and with one entry more. Answers 1 where the browser misses the goal, cold or warm.
 */
export const run = async (argv: readonly string[]): Promise<number> => {
  const entries = yearOf(ENTRIES)
  const browser = await measureFoldInBrowser(entries, THROTTLE)
  const node = measureInNode(entries)
  const { medianColdMs, medianWarmMs } = browser.fold
  const isKept = medianColdMs <= GOAL_MS && medianWarmMs <= GOAL_MS
  const lines = [
    `${ENTRIES} entries in Chromium, main thread at ${THROTTLE}x throttle, wall time, medians; goal ${GOAL_MS} ms ${isKept ? 'kept' : 'missed'}`,
    browserLine('fold from nothing', browser.fold),
    browserLine('plain reduce without any check', browser.plainReduce),
    `the fold takes ${(medianColdMs / browser.plainReduce.medianColdMs).toFixed(2)} times as long cold, ${(medianWarmMs / browser.plainReduce.medianWarmMs).toFixed(2)} times warm`,
    `Node, not throttled, processor time on all threads, least of ${ROUNDS} rounds`,
    `fold from nothing: ${node.foldMs.toFixed(0)} ms; plain reduce: ${node.plainReduceMs.toFixed(0)} ms`,
    `snapshot read back, one entry on top: ${node.fromSnapshotMs.toFixed(0)} ms; one entry more: ${node.oneMoreMs.toFixed(1)} ms`,
  ]
  const result = { entries: ENTRIES, throttle: THROTTLE, goalMs: GOAL_MS, kept: isKept, browser, node }
  process.stdout.write(`${argv.includes('--json') ? JSON.stringify(result) : lines.join('\n')}\n`)
  return isKept ? 0 : 1
}
