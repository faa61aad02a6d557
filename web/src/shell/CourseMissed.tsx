import { courseMissed } from '../state/courses.ts'
import { WORDS } from '../screens/courses/words.ts'

/** Says that a link asked for a course that this device does not see, instead of quietly showing another. */
export const CourseMissed = () =>
  courseMissed.value === null ? null : (
    <div class="new-version" role="status">
      <span>{WORDS.missed}</span>
      <button
        type="button"
        onClick={() => {
          courseMissed.value = null
        }}
      >
        {WORDS.understood}
      </button>
    </div>
  )
