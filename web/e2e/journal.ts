import { KINDS, momentFromMs, uuidV7, type Entry } from '@swardwright/journal'

/** Id of the first course of the server at an address. */
export const courseOn = async (address: string): Promise<string> => {
  const [course] = (await (await fetch(`${address}/api/courses`)).json()) as { id: string }[]
  return course?.id ?? ''
}

/** Every entry that the server has of that course, by its own pages. */
export const entriesOn = async (address: string): Promise<readonly Entry[]> => {
  const course = await courseOn(address)
  const entries: Entry[] = []
  for (let cursor = '0', more = true; more;) {
    const page = `${address}/api/courses/${course}/entries?after=${encodeURIComponent(cursor)}`
    const answer = (await (await fetch(page)).json()) as { entries: Entry[]; cursor: string; more: boolean }
    entries.push(...answer.entries)
    ;({ cursor, more } = answer)
  }
  return entries
}

/** Holds the clock of that course at a moment, as the settings page does; throws with the server's words where it will not. */
export const holdClock = async (address: string, now: string): Promise<void> => {
  const course = await courseOn(address)
  const nowMs = Date.now()
  const at = momentFromMs(nowMs)
  const entry = {
    id: uuidV7({ nowMs, random: crypto.getRandomValues(new Uint8Array(10)) }),
    course,
    device: 'clock',
    author: 'Course manager',
    at,
    recordedAt: at,
    kind: 'courseChanged',
    version: KINDS.courseChanged.version,
    body: { changes: [{ part: 'facts', do: 'set', fields: { now } }] },
  }
  const answer = await fetch(`${address}/api/courses/${course}/entries`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ entries: [entry] }),
  })
  const told = (await answer.json()) as { readonly refused?: readonly unknown[] }
  if (!answer.ok || told.refused?.length !== 0)
    throw new Error(`the clock could not be held: ${JSON.stringify(told)}`)
}
