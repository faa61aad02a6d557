import { decides } from '../../state/access.ts'
import { useCourse } from '../../state/course.ts'
import { WORDS } from './words.ts'

/** Says that the clock stands still to try things out, as in the demo, and where to go from there. */
export const HeldClock = () => {
  const { now } = useCourse()
  if (now === null || !decides.value) return null
  return (
    <p class="small quiet no-print">
      {WORDS.held} <a href="/courses">{WORDS.ownCourse}</a>, <a href="/settings">{WORDS.setClock}</a>
    </p>
  )
}
