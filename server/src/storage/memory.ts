import { sameJson } from '@swardwright/journal'
import { memoryBlobs } from './memoryBlobs.ts'
import { memoryAccounts, memoryPasses } from './memoryPeople.ts'
import type {
  ArrivingEntry,
  CourseNaming,
  CourseRow,
  JournalStore,
  KeptEntry,
  Outcome,
  Storage,
  TokenRow,
  TokenStore,
  WeatherStore,
} from './storage.ts'

type Shelf = {
  name: string
  named: { readonly atMs: number; readonly entry: string }
  readonly kept: KeptEntry[]
}

const isLater = (a: CourseNaming, b: Shelf['named']): boolean =>
  a.atMs > b.atMs || (a.atMs === b.atMs && a.entry > b.entry)

/** Keeps one entry on a shelf unless its id is there. */
const keep = (shelf: Shelf, arriving: ArrivingEntry): Outcome => {
  const known = shelf.kept.find((kept) => kept.entry.id === arriving.entry.id)
  if (known !== undefined) return sameJson(known.entry, arriving.entry) ? 'known' : 'differs'
  shelf.kept.push({ ...structuredClone(arriving), seq: shelf.kept.length + 1 })
  return 'stored'
}

const endOf = (shelf: Shelf | undefined) => {
  const last = shelf?.kept.at(-1)
  return last === undefined
    ? null
    : { seq: last.seq, id: last.entry.id, receivedMs: Date.parse(last.receivedAt) }
}

const memoryJournal = (shelves: Map<string, Shelf>): JournalStore => ({
  courses: async () =>
    [...shelves]
      .map(([id, { name }]): CourseRow => ({ id, name }))
      .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1)),
  addCourse: async ({ id, name }) => {
    if (!shelves.has(id)) shelves.set(id, { name, named: { atMs: 0, entry: '' }, kept: [] })
  },
  append: async (course, entries, naming) => {
    const shelf = shelves.get(course)
    if (shelf === undefined) throw new Error(`there is no course ${course}`)
    if (naming !== null && isLater(naming, shelf.named)) {
      shelf.name = naming.name
      shelf.named = naming
    }
    return { outcomes: entries.map((entry) => keep(shelf, entry)), end: endOf(shelf) }
  },
  page: async (course, afterSeq, limit) =>
    structuredClone(shelves.get(course)?.kept.slice(afterSeq, afterSeq + limit) ?? []),
  find: async (course, ids) =>
    structuredClone(shelves.get(course)?.kept.filter((kept) => ids.includes(kept.entry.id)) ?? []),
  end: async (course) => endOf(shelves.get(course)),
})

const memoryTokens = (rows: Map<string, TokenRow>): TokenStore => ({
  add: async (row) => {
    rows.set(row.id, { ...row, revokedAt: null })
  },
  list: async () => [...rows.values()],
  findByHash: async (hash) =>
    [...rows.values()].find((row) => row.hash === hash && row.revokedAt === null) ?? null,
  revoke: async (id, revokedAt) => {
    const row = rows.get(id)
    if (row === undefined || row.revokedAt !== null) return false
    rows.set(id, { ...row, revokedAt })
    return true
  },
})

const memoryWeather = (shelves: ReadonlyMap<string, Shelf>): WeatherStore => {
  const texts = new Map<string, string>()
  return {
    read: async (course, name) => texts.get(JSON.stringify([course, name])) ?? null,
    write: async (course, name, text) => {
      if (!shelves.has(course)) throw new Error(`there is no course ${course}`)
      texts.set(JSON.stringify([course, name]), text)
    },
  }
}

/** Storage that lasts as long as the process: for tests, and to look at the app without leaving anything behind. */
export const memoryStorage = (): Storage => {
  const shelves = new Map<string, Shelf>()
  return {
    journal: memoryJournal(shelves),
    tokens: memoryTokens(new Map()),
    accounts: memoryAccounts(),
    passes: memoryPasses(),
    blobs: memoryBlobs(),
    weather: memoryWeather(shelves),
    close: async () => undefined,
  }
}
