import { counted } from '@swardwright/present'
import { keepsEntries, link, refused, unsent } from '../state/journal.ts'

const waiting = (count: number): string => `${counted(count, 'change', 'changes')} kept here, not sent yet`

const words = (): string => {
  const count = unsent.value.length
  if (!keepsEntries.value && count > 0)
    return `${counted(count, 'change', 'changes')} not sent: leave this page open`
  if (link.value === 'refused') return count > 0 ? waiting(count) : 'The server will not answer this device'
  if (link.value === 'away') return count > 0 ? `No line. ${waiting(count)}` : 'No line. All is kept here'
  return count > 0 ? 'Sending …' : 'All kept and sent'
}

/** How things stand between this device and the server, in plain words. */
export const SyncLine = () => (
  <p class="small quiet" role="status">
    {words()}
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
