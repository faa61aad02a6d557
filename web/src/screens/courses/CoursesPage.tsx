import { useEffect, useState } from 'preact/hooks'
import { Choice } from '../../parts/fields.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { isManager } from '../../state/access.ts'
import { askCourses } from '../../state/courses.ts'
import { beginCourse } from '../../state/open.ts'
import { SecretForm } from '../account/SecretForm.tsx'
import { CourseList } from './CourseList.tsx'
import { WORDS } from './words.ts'

const FROM = ['nothing', 'demo'] as const

const Another = () => {
  const [from, setFrom] = useState<(typeof FROM)[number]>('nothing')
  return (
    <Part title={WORDS.another}>
      <div class="stack">
        <p class="small quiet">{WORDS.anotherLead}</p>
        <Choice
          label={WORDS.from}
          value={from}
          options={FROM.map((value) => ({ value, label: WORDS.fromOptions[value] }))}
          onValue={setFrom}
        />
        <SecretForm
          fields={[{ name: 'name', label: WORDS.name, autoComplete: 'off' }]}
          button={WORDS.make}
          onSend={({ name = '' }) => beginCourse(name, from)}
        />
      </div>
    </Part>
  )
}

/** The courses of this server: which one is open here, turning to another, making one. */
export const CoursesPage = () => {
  const [wrong, setWrong] = useState<string | null>(null)
  useEffect(() => void askCourses().then(setWrong), [])
  return (
    <Page title={WORDS.title} lead={WORDS.lead}>
      <div class="columns">
        <div class="stack">
          <CourseList />
          <p class="hint" role="status">
            {wrong === null ? '' : WORDS.offline}
          </p>
        </div>
        {isManager.value ? <Another /> : null}
      </div>
    </Page>
  )
}
