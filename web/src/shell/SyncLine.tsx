import { counted } from '@swardwright/present'
import { courseName, unsentElsewhere } from '../state/courses.ts'
import { clockAheadMs, keepsEntries, link, refused, unsent } from '../state/journal.ts'
import { photosRefused, photosWaiting } from '../state/photos.ts'

/** What the server does not have yet, as ‘3 changes and 1 photo’; null when it has all. */
const lacking = (): string | null => {
  const [changes, photos] = [unsent.value.length, photosWaiting.value.length]
  const parts = [
    ...(changes === 0 ? [] : [counted(changes, 'change', 'changes')]),
    ...(photos === 0 ? [] : [counted(photos, 'photo', 'photos')]),
  ]
  return parts.length === 0 ? null : parts.join(' and ')
}

const words = (): string => {
  const left = lacking()
  if (!keepsEntries.value && left !== null) return `${left} not sent: leave this page open`
  const kept = `${left} kept here, not sent yet`
  if (link.value === 'refused') return left === null ? 'The server will not answer this device' : kept
  if (link.value === 'away') return `No line. ${left === null ? 'All is kept here' : kept}`
  if (unsent.value.length > 0) return 'Sending …'
  return left === null ? 'All kept and sent' : kept
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
    {unsentElsewhere.value.map(({ course, count }) => (
      <span key={course}>
        {' '}
        {courseName(course)}: {counted(count, 'change', 'changes')} not sent yet.
      </span>
    ))}
    {refused.value.length === 0 ? null : (
      <>
        {' '}
        <a href="/settings#attention" class="rust">
          {counted(refused.value.length, 'change needs', 'changes need')} attention
        </a>
      </>
    )}
    {photosRefused.value.length === 0 ? null : (
      <>
        {' '}
        <a href="/settings#photos" class="rust">
          {counted(photosRefused.value.length, 'photo needs', 'photos need')} attention
        </a>
      </>
    )}
  </p>
)
