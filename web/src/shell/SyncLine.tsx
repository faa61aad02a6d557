import { counted } from '@swardwright/present'
import { clockAheadMs, keepsEntries, link, refused, unsent } from '../state/journal.ts'

const waiting = (count: number): string => `${counted(count, 'change', 'changes')} kept here, not sent yet`

const words = (): string => {
  const count = unsent.value.length
  if (!keepsEntries.value && count > 0)
    return `${counted(count, 'change', 'changes')} not sent: leave this page open`
  if (link.value === 'refused') return count > 0 ? waiting(count) : 'The server will not answer this device'
  if (link.value === 'away') return count > 0 ? `No line. ${waiting(count)}` : 'No line. All is kept here'
  return count > 0 ? 'Sending …' : 'All kept and sent'
}

/** Off by less than this does no harm to the order of a day's work. */
const CLOCK_OFF_MS = 2 * 60_000

const clockWords = (aheadMs: number): string =>
  `The clock of this device is ${counted(Math.round(Math.abs(aheadMs) / 60_000), 'minute', 'minutes')} ${aheadMs > 0 ? 'ahead' : 'behind'}. Set it.`

/** How things stand between this device and the server, in plain words. */
export const SyncLine = () => (
  <p class="small quiet" role="status">
    {words()}
    {clockAheadMs.value === null || Math.abs(clockAheadMs.value) < CLOCK_OFF_MS ? null : (
      <>
        {' '}
        <span class="rust">{clockWords(clockAheadMs.value)}</span>
      </>
    )}
    {refused.value.length === 0 ? null : (
      <>
        {' '}
        <a href="/settings#attention" class="rust">
          {counted(refused.value.length, 'change needs', 'changes need')} attention
        </a>
      </>
    )}
  </p>
)
