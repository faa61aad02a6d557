import { type Entry } from '@swardwright/journal'
import type { EntryStore } from '../journal/entry-store.ts'
import { joinPages, type PageWord } from '../journal/other-pages.ts'
import { oneAtATime } from '../journal/repeat.ts'
import { callServer } from '../journal/server.ts'
import { exchange, type LinkState, type SyncHolder } from '../journal/sync.ts'
import { takeTurns, type Turns } from '../journal/turns.ts'
import { askWho, sender, who } from './access.ts'
import { clockAheadMs, journal, keepsEntries, link, opening, refused, unsent } from './journal.ts'
import { listenLive } from './live.ts'
import { photosAgain, postPhotos } from './photos.ts'
import { freshId, readAll, takeIn } from './record.ts'

const RETRY_MS = 10_000

/** After so long without a word the page that deals with the server is taken for asleep: two tries of its own, and a little. */
const SILENCE_MS = 25_000

/** What is shown while this device has no course, by how the last exchange ended. */
const OPENING_WITHOUT_COURSE = { level: 'noCourse', away: 'unreachable', refused: 'closed' } as const

/** What the exchange of one course works on. */
type Shared = { readonly course: string; readonly store: EntryStore; readonly device: string }

const entriesNow = (): ReadonlyMap<string, Entry> =>
  new Map(journal.value.entries.map(({ entry }) => [entry.id, entry]))

const showOpen = (): void => {
  if (journal.value.facts.course !== null) opening.value = 'open'
}

const showLink = (state: LinkState): void => {
  link.value = state
  opening.value = journal.value.facts.course !== null ? 'open' : OPENING_WITHOUT_COURSE[state]
}

const queue = (id: string): void => {
  if (!unsent.value.includes(id)) unsent.value = [...unsent.value, id]
}

const takeLeft = (sent: readonly string[], fresh: typeof refused.value): void => {
  const gone = new Set([...sent, ...fresh.map((refusal) => refusal.id)])
  unsent.value = unsent.value.filter((id) => !gone.has(id))
  refused.value = [...refused.value, ...fresh]
}

/** Reads from the store what other pages did meanwhile. */
const readStore = async ({
  course,
  store,
}: Shared): Promise<{ cursor: string | null; seen: string | null }> => {
  const known = new Set([...entriesNow().keys(), ...(journal.value.before?.ids ?? [])])
  const kept = await store.load(course, known)
  takeIn(kept.entries)
  unsent.value = kept.unsent
  refused.value = kept.refused
  return kept
}

const holderOf = (
  { course, store, device }: Shared,
  place: { cursor: string | null; seen: string | null },
  tell: (word: PageWord) => void,
): SyncHolder => ({
  course,
  store,
  device,
  call: callServer,
  unsent: () => {
    const byId = entriesNow()
    return unsent.value.flatMap((id) => byId.get(id) ?? [])
  },
  cursor: () => place.cursor,
  seen: () => place.seen,
  saw: (told) => {
    place.seen = told
  },
  arrived: (entries, next) => {
    place.cursor = next
    takeIn(entries)
    if (entries.length > 0) tell({ say: 'arrived', entries })
  },
  left: (sent, fresh) => {
    takeLeft(sent, fresh)
    tell({ say: 'left', sent, refused: fresh })
  },
  queuedAgain: async () => {
    await readAll()
    unsent.value = (await store.load(course, new Set())).unsent
    tell({ say: 'waiting', unsent: unsent.value })
    photosAgain()
  },
  clockAhead: (aheadMs) => {
    clockAheadMs.value = aheadMs
  },
  nowMs: Date.now,
  ...sender,
})

/** What a page does with a word from another one. */
const hear = (word: PageWord, on: { readonly sync: () => void; readonly answer: () => void }): void => {
  switch (word.say) {
    case 'recorded':
      takeIn([word.entry])
      queue(word.entry.id)
      showOpen()
      return on.sync()
    case 'arrived':
      takeIn(word.entries)
      return showOpen()
    case 'left':
      return takeLeft(word.sent, word.refused)
    case 'waiting':
      unsent.value = word.unsent
      return void readAll()
    case 'link':
      if (who.value === null && word.state !== 'away') void askWho()
      return showLink(word.state)
    case 'hello':
      return on.answer()
  }
}

/**
 * Deals with the server for all pages of this browser: one of them pushes, pulls and listens, and tells the others. Answers with what to do
 * with an entry recorded on this page. `onLevel` is called on the page that deals with the server after its first exchange.
 */
export const shareExchange = (shared: Shared, onLevel: () => Promise<void>): ((entry: Entry) => void) => {
  const place = { cursor: null as string | null, seen: null as string | null }
  let turns: Turns | null = null
  let heardMs = Date.now()
  let listens = false
  const isMine = (): boolean => turns?.isMine() ?? false
  const toOthers = joinPages(shared.course, (word) => {
    heardMs = Date.now()
    hear(word, {
      sync: () => void sync(),
      answer: () => {
        if (isMine() && link.value !== null) tell({ say: 'link', state: link.value })
      },
    })
  })
  const tell = (word: PageWord): void => toOthers?.(word)
  const holder = holderOf(shared, place, tell)
  const sync = oneAtATime(async () => {
    if (!isMine()) return
    // Asked in the background, so that a poor line never keeps the page from opening.
    if (who.value === null) await askWho()
    const before = link.value
    showLink(await exchange(holder))
    tell({ say: 'link', state: link.value ?? 'away' })
    if (link.value === 'level') postPhotos(isMine, before !== 'level')
  })
  const begin = async (): Promise<void> => {
    Object.assign(place, await readStore(shared))
    await sync()
    await onLevel()
    if (listens) return
    listens = true
    listenLive(shared.course, () => void sync())
    addEventListener('online', () => void sync())
  }
  // Pages that share no store, or can't hear each other, deal with the server each for itself.
  if (toOthers === null || !keepsEntries.value) {
    turns = { isMine: () => true, take: () => undefined }
    void begin()
  } else turns = takeTurns(`swardwright sync ${shared.course}`, freshId(Date.now()), () => void begin())
  tell({ say: 'hello' })
  setInterval(() => {
    if (isMine() && link.value !== 'level') void sync()
    const isLeftAlone = !isMine() && unsent.value.length > 0 && Date.now() - heardMs > SILENCE_MS
    if (isLeftAlone && document.visibilityState === 'visible') turns?.take()
  }, RETRY_MS)
  return (entry) => {
    tell({ say: 'recorded', entry })
    void sync()
  }
}
