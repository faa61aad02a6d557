import type { Opening } from '../../state/journal.ts'
import { Door } from '../account/Door.tsx'
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
