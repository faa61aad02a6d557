import { KINDS, momentFromMs, uuidV7, type Entry, type KindName } from '@swardwright/journal'

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

/** One entry of the invented diary; `number` makes its id. */
export const entryAt = (number: number, atMs: number, kind: KindName, body: Entry['body']): Entry => {
  const random = new Uint8Array(10)
  new DataView(random.buffer).setUint32(6, number)
  const at = momentFromMs(atMs)
  const id = uuidV7({ nowMs: atMs, random })
  return { id, course: 'bench', device: 'd', author: 'Ada', at, recordedAt: at, kind, version: 1, body }
}

/** As many entries, ten minutes apart; every 40th came in an hour after its turn, as from a phone without signal. */
export const yearOf = (count: number): readonly Entry[] => {
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
