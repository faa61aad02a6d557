import { describe, expect, it } from 'vitest'
import { journalReader } from './journalReader.ts'
import { memoryStorage } from './storage/memory.ts'
import type { ArrivingEntry, JournalStore } from './storage/storage.ts'
import { noteEntry } from './testing/entries.ts'

const arriving = (number: number): ArrivingEntry => ({
  entry: noteEntry(number),
  receivedAt: '2026-08-10T06:00:00.000Z',
  sender: 'local',
  skewMs: null,
})

const withNotes = async (...numbers: readonly number[]): Promise<JournalStore> => {
  const { journal } = memoryStorage()
  await journal.addCourse({ id: 'links', name: 'Links' })
  await journal.append('links', numbers.map(arriving), null)
  return journal
}

const wordsOf = async (reader: ReturnType<typeof journalReader>) =>
  (await reader.factsOf('links')).notes.map(({ value }) => value.words)

describe('journalReader', () => {
  it('reads what the journal says, and later only what came since', async () => {
    const journal = await withNotes(1, 2)
    const pages: number[] = []
    const watched: JournalStore = {
      ...journal,
      page: (course, afterSeq, limit) => {
        pages.push(afterSeq)
        return journal.page(course, afterSeq, limit)
      },
    }
    const reader = journalReader(watched)
    expect(await wordsOf(reader)).toEqual(['note 1', 'note 2'])
    await journal.append('links', [arriving(3)], null)
    pages.length = 0
    expect(await wordsOf(reader)).toEqual(['note 1', 'note 2', 'note 3'])
    // Whether entry 2 still stands there, what comes after it, and whether that was all.
    expect(pages).toEqual([1, 2, 3])
  })

  it('[J28] begins anew where another journal stands in its place', async () => {
    let journal = await withNotes(1, 2, 3)
    const moved: JournalStore = { ...journal, page: (...args) => journal.page(...args) }
    const reader = journalReader(moved)
    await wordsOf(reader)
    journal = await withNotes(1, 7)
    expect(await wordsOf(reader)).toEqual(['note 1', 'note 7'])
  })

  it('reads each once when many ask at the same moment', async () => {
    const reader = journalReader(await withNotes(1, 2))
    const all = await Promise.all([wordsOf(reader), wordsOf(reader), wordsOf(reader)])
    expect(all).toEqual(Array.from({ length: 3 }, () => ['note 1', 'note 2']))
  })
})
