import { computed, signal } from '@preact/signals'
import { initialState, type JournalState, type Refusal } from '@swardwright/journal'
import type { LinkState } from '../journal/sync.ts'

/** Everything this device knows of the course: its entries and what they say. */
export const journal = signal<JournalState>(initialState)

/** What the entries say. */
export const facts = computed(() => journal.value.facts)

/** Ids of entries that the server does not have yet. */
export const unsent = signal<readonly string[]>([])

/** Entries that the server would not take; they stay here and need somebody’s attention. */
export const refused = signal<readonly Refusal[]>([])

/** How the last exchange ended; null before the first. */
export const link = signal<LinkState | null>(null)

/** How far the server found this device’s clock ahead of its own when it last sent something, ms; null before it has said. */
export const clockAheadMs = signal<number | null>(null)

/** False where the browser refuses its database: then nothing outlives this page but what the server has. */
export const keepsEntries = signal(true)

/**
 * How far the journal is open. `noCourse`: neither this device nor the server has one. `unreachable`: nothing here, and no server to ask.
 * `closed`: nothing here, and the server asks who this is. */
export type Opening = 'opening' | 'open' | 'noCourse' | 'unreachable' | 'closed'

/** How far the journal is open. */
export const opening = signal<Opening>('opening')

/** The open course’s id on the server. */
export const courseId = signal<string | null>(null)
