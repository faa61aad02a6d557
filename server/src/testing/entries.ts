import { KINDS, momentFromMs, uuidV7, type Entry, type KindName } from '@swardwright/journal'

/** 10 August 2026, 06:00 UTC: what the clock of test servers shows. */
export const NOW_MS = Date.UTC(2026, 7, 10, 6)

/** The id with this number. */
export const idOf = (number: number): string => {
  const random = new Uint8Array(10)
  new DataView(random.buffer).setUint32(6, number)
  return uuidV7({ nowMs: NOW_MS, random })
}

/** A valid entry of any kind, from the kind's own example. */
export const exampleEntry = (kind: KindName, number: number, course = 'links'): Entry => {
  const at = momentFromMs(NOW_MS - 60_000 + number)
  const body: Entry['body'] = { ...KINDS[kind].example }
  return {
    id: idOf(number),
    course,
    device: 'test',
    author: 'Ada',
    at,
    recordedAt: at,
    kind,
    version: 1,
    body,
  }
}

/** A valid note. */
export const noteEntry = (number: number, words = `note ${number}`, course = 'links'): Entry => ({
  ...exampleEntry('noteWritten', number, course),
  body: { words },
})
