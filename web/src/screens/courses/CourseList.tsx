import { courses, coursesHere } from '../../state/courses.ts'
import { courseId } from '../../state/journal.ts'
import { turnToCourse } from '../../state/open.ts'
import { WORDS } from './words.ts'

/** The courses that this device sees, each with a button to turn to it. */
export const CourseList = () => (
  <ul class="rows">
    {courses.value.map(({ id, name }) => {
      const isOpen = id === courseId.value
      const isHere = isOpen || coursesHere.value.includes(id)
      return (
        <li key={id}>
          <div class="line">
            <span class="name">{name}</span>
            <span class="rest small">{isOpen ? WORDS.open : isHere ? WORDS.here : WORDS.notHere}</span>
            {isOpen ? null : (
              <button
                type="button"
                class="thin"
                aria-label={`${WORDS.turn} ${name}`}
                onClick={() => void turnToCourse(id)}
              >
                {WORDS.turn}
              </button>
            )}
          </div>
        </li>
      )
    })}
  </ul>
)
