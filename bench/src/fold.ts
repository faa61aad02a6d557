import {
  KINDS,
  extend,
  fold,
  initialState,
  momentFromMs,
  snapshotOf,
  stateOf,
  uuidV7,
  type Entry,
  type KindName,
} from '@swardwright/journal'

const ENTRIES = 50_000
const ROUNDS = 15

/** A phone's core is taken as a quarter of this one, as browsers' throttling does. */
const THROTTLE = 4
const GOAL_MS = 300

/** A season as a crew writes it: mostly steps and readings, now and then a strike, a change of the course or a new forecast. */
const MIX: readonly KindName[] = [
  'taskStarted',
  'taskFinished',
  'taskStarted',
  'taskFinished',
  'measureTaken',
  'measureTaken',
  'stockUsed',
  'photoTaken',
  'noteWritten',
  'greenFinished',
  'taskStopped',
  'problemReported',
]
const RARE: readonly (readonly [every: number, kind: KindName])[] = [
  [997, 'courseChanged'],
  [499, 'forecastReceived'],
  [211, 'struck'],
  [97, 'rainBegan'],
  [101, 'rainEnded'],
]

const entryAt = (number: number, atMs: number, kind: KindName, body: Entry['body']): Entry => {
  const random = new Uint8Array(10)
  new DataView(random.buffer).setUint32(6, number)
  const at = momentFromMs(atMs)
  const id = uuidV7({ nowMs: atMs, random })
  return { id, course: 'bench', device: 'd', author: 'Ada', at, recordedAt: at, kind, version: 1, body }
}

/** As many entries, ten minutes apart; every 40th came in an hour after its turn, as from a phone without signal. */
const yearOf = (count: number): readonly Entry[] => {
  const made: Entry[] = []
  for (let number = 0; number < count; number += 1) {
    const rare = RARE.find(([every]) => number % every === every - 1)?.[1]
    const kind = rare ?? MIX[number % MIX.length] ?? 'noteWritten'
    const atMs = Date.UTC(2026, 0, 1) + (number - (number % 40 === 0 ? 6 : 0)) * 600_000
    const body: Entry['body'] =
      kind === 'struck' ? { entry: made[number - 5]?.id, reason: 'wrong green' } : { ...KINDS[kind].example }
    made.push(entryAt(number, atMs, kind, body))
  }
  return made
}

/** The plain way, which checks nothing: sort, drop what is double, push into a list a kind. */
const plainReduce = (entries: readonly Entry[]): Readonly<Record<string, readonly unknown[]>> => {
  const seen = new Set<string>()
  const ordered = entries
    .map((entry) => ({ entry, atMs: Date.parse(entry.at) }))
    .sort((a, b) => a.atMs - b.atMs || (a.entry.id < b.entry.id ? -1 : 1))
  return ordered.reduce<Record<string, unknown[]>>((lists, { entry }) => {
    if (seen.has(entry.id)) return lists
    seen.add(entry.id)
    const list = (lists[entry.kind] ??= [])
    list.push({ entry: entry.id, author: entry.author, at: entry.at, value: entry.body })
    return lists
  }, {})
}

const processorMs = (work: () => unknown): number => {
  const before = process.cpuUsage()
  work()
  return process.cpuUsage(before).user / 1000
}

/** The first round, and the least disturbed of the others: what else runs on the machine only ever adds. */
const leastMs = (work: () => unknown): { readonly firstMs: number; readonly leastMs: number } => {
  const firstMs = processorMs(work)
  return { firstMs, leastMs: Math.min(...Array.from({ length: ROUNDS }, () => processorMs(work))) }
}

/** `bench fold [--json]`: a year's diary of 50,000 entries folded from nothing, from a snapshot, and one entry more, against a plain reduce. */
export const run = (argv: readonly string[]): Promise<number> => {
  const entries = yearOf(ENTRIES)
  const whole = leastMs(() => fold(initialState, entries))
  const peer = leastMs(() => plainReduce(entries))
  const state = fold(initialState, entries)
  const snapshot = snapshotOf(state)
  if (snapshot === null) throw new Error('there are entries')
  const kept = JSON.stringify(snapshot)
  const late = entryAt(ENTRIES, Date.UTC(2028, 0, 1), 'noteWritten', { words: 'one more' })
  const fromSnapshot = leastMs(() => {
    const begun = stateOf(JSON.parse(kept))
    if (begun === null || extend(begun, [late]) === null) throw new Error('the snapshot is of this version')
  })
  let grown = state
  const onTop = leastMs(() => {
    const next = entryAt(ENTRIES + grown.entries.length, Date.UTC(2028, 0, 1), 'noteWritten', { words: 'x' })
    grown = fold(grown, [next])
  })
  const throttledMs = whole.leastMs * THROTTLE
  const result = {
    entries: ENTRIES,
    foldMs: whole.leastMs,
    firstMs: whole.firstMs,
    throttle: THROTTLE,
    throttledMs,
    goalMs: GOAL_MS,
    kept: throttledMs <= GOAL_MS,
    plainReduceMs: peer.leastMs,
    ratio: whole.leastMs / peer.leastMs,
    fromSnapshotMs: fromSnapshot.leastMs,
    oneMoreMs: onTop.leastMs,
  }
  const lines = [
    `${ENTRIES} entries, processor time on one core, least of ${ROUNDS} rounds`,
    `fold from nothing: ${result.foldMs.toFixed(0)} ms (first round ${result.firstMs.toFixed(0)} ms), ${throttledMs.toFixed(0)} ms at ${THROTTLE}x throttle; goal ${GOAL_MS} ms ${result.kept ? 'kept' : 'missed'}`,
    `plain reduce without any check: ${result.plainReduceMs.toFixed(0)} ms; the fold takes ${result.ratio.toFixed(2)} times as long`,
    `snapshot read back, one entry on top: ${result.fromSnapshotMs.toFixed(0)} ms; one entry more: ${result.oneMoreMs.toFixed(1)} ms`,
  ]
  process.stdout.write(`${argv.includes('--json') ? JSON.stringify(result) : lines.join('\n')}\n`)
  return Promise.resolve(result.kept ? 0 : 1)
}
