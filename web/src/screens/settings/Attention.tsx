import { KINDS, findKind, type RefusalReason } from '@swardwright/journal'
import { dayAndClock } from '@swardwright/present'
import { useCourse } from '../../state/course.ts'
import { journal, refused } from '../../state/journal.ts'
import { ATTENTION_WORDS } from './words.ts'

/** The field helps only where the entry itself is wrong. */
const reasonWords = (why: RefusalReason, field: string | undefined): string =>
  why === 'bad-body' && field !== undefined ? `${ATTENTION_WORDS[why]} (${field})` : ATTENTION_WORDS[why]

/** Entries that the server would not take: they stay on this device, and somebody should know. */
export const Attention = () => {
  const { timeZone } = useCourse()
  const entries = new Map(journal.value.entries.map(({ entry }) => [entry.id, entry]))
  return (
    <ul class="rows" id="attention">
      {refused.value.map((refusal) => {
        const entry = entries.get(refusal.id)
        return (
          <li key={refusal.id}>
            <div class="line">
              <span class="name">
                {entry === undefined ? refusal.id : findKind(KINDS, entry.kind)?.meaning}
              </span>
              <span class="rest">{entry === undefined ? '' : dayAndClock(entry.at, timeZone)}</span>
              <span class="needs">{reasonWords(refusal.why, refusal.field)}</span>
            </div>
          </li>
        )
      })}
    </ul>
  )
}
