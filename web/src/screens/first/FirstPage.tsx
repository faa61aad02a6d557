import type { Opening } from '../../state/journal.ts'
import { Part } from '../../parts/Page.tsx'
import { hasCourses } from '../../state/courses.ts'
import { Door } from '../account/Door.tsx'
import { CourseList } from '../courses/CourseList.tsx'
import { WORDS as COURSES_WORDS } from '../courses/words.ts'
import { ImportCourse } from '../course/ImportCourse.tsx'
import { WORDS } from './words.ts'

const Unreachable = () => (
  <div class="stack">
    <h1>{WORDS.unreachable}</h1>
    <p>{WORDS.unreachableLead}</p>
    <button type="button" class="primary" onClick={() => location.reload()}>
      {WORDS.again}
    </button>
  </div>
)

const NoCourse = () => (
  <div class="wide">
    <div class="tight">
      <h1>{WORDS.noCourse}</h1>
      <p>{WORDS.noCourseLead}</p>
    </div>
    <ImportCourse />
    {hasCourses.value ? (
      <Part title={COURSES_WORDS.others}>
        <CourseList />
      </Part>
    ) : null}
  </div>
)

/** What is shown while there is no course to show. */
export const FirstPage = (props: { readonly opening: Exclude<Opening, 'open'> }) => (
  <main class="page" id="page">
    {props.opening === 'opening' ? (
      <>
        <h1>{WORDS.title}</h1>
        <p role="status">{WORDS.opening}</p>
      </>
    ) : props.opening === 'unreachable' ? (
      <Unreachable />
    ) : props.opening === 'closed' ? (
      <Door />
    ) : (
      <NoCourse />
    )}
  </main>
)
