import type { HistoryOutcome } from '@swardwright/journal'
import { counted, dateRange } from '@swardwright/present'
import { Note } from '../../parts/Note.tsx'
import { HISTORY_WORDS as W } from './words.ts'

/** How far bringing a record in has come; null while nobody has tried. */
export type BroughtIn = HistoryOutcome | 'reading' | null

/** What came of bringing a record in: how much, or why not; rows that were not taken stand below the record itself. */
export const OutcomeNote = ({ outcome }: { readonly outcome: BroughtIn }) => {
  if (outcome === null) return null
  if (outcome === 'reading') return <p role="status">{W.reading}</p>
  const { kept, why } = outcome
  return kept === null ? (
    <Note kind="rust" word={W.notBroughtIn} live>
      {why}.
    </Note>
  ) : (
    <Note kind="leaf" word={W.broughtIn} live>
      {counted(kept.rows, 'day', 'days')}, {dateRange(kept.from, kept.to)}.
    </Note>
  )
}
