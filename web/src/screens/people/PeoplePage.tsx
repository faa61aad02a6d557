import { TYPICAL_PERSON, type Person } from '@swardwright/engine'
import { listed, TASK_WORDS } from '@swardwright/present'
import { NamedFolds } from '../../parts/NamedFolds.tsx'
import { newId } from '../../parts/new-id.ts'
import { Page } from '../../parts/Page.tsx'
import { useCourse } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { PersonForm } from './PersonForm.tsx'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'
import { decides } from '../../state/access.ts'

const essentials = (person: Person): string =>
  `${person.shift.from} to ${person.shift.to}, ${
    person.skills.length > 5
      ? `${person.skills.length} skills`
      : listed(person.skills.map((skill) => TASK_WORDS[skill].work)) || 'no skill yet'
  }`

const newPerson = (taken: readonly string[]): Person => ({
  ...TYPICAL_PERSON,
  id: newId(WORDS.newName, taken),
  name: WORDS.newName,
  skills: [],
})

/** The crew. */
export const PeoplePage = () => {
  const { people } = useCourse()
  const add = () =>
    changeCourse({ part: 'people', do: 'put', value: newPerson(people.map((person) => person.id)) })
  return (
    <Page title={WORDS.title} lead={WORDS.lead}>
      <div class="wide">
        <NamedFolds
          things={people}
          none={WORDS.none}
          essentials={essentials}
          behind={(person) => (
            <Deciding>
              <PersonForm person={person} />
              <button
                type="button"
                class="thin"
                onClick={() => void changeCourse({ part: 'people', do: 'remove', id: person.id })}
              >
                {WORDS.remove}
              </button>
            </Deciding>
          )}
        />
        {decides.value ? (
          <button type="button" onClick={() => void add()}>
            {WORDS.add}
          </button>
        ) : null}
      </div>
    </Page>
  )
}
