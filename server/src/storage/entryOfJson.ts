import * as v from 'valibot'
import { entrySchema, type Entry } from '@swardwright/journal'

/** An entry as a database keeps it. Corrupt data stops here with the number of the entry; nothing is guessed. */
export const entryOfJson = (seq: number, json: string): Entry => {
  const entry = v.safeParse(entrySchema, JSON.parse(json))
  if (!entry.success) throw new Error(`entry ${seq} in the database is damaged: ${v.summarize(entry.issues)}`)
  return entry.output
}
