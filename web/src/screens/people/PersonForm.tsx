import { OPERATIONS, personSchema, type Operation, type Person } from '@swardwright/engine'
import { TASK_WORDS } from '@swardwright/present'
import { DateList } from '../../parts/DateList.tsx'
import { TextField, Tick } from '../../parts/fields.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { changeCourse } from '../../state/record.ts'
import { Breaks } from './Breaks.tsx'
import { WORDS } from './words.ts'

type PersonFields = Partial<Omit<Person, 'id'>>

const withSkill = (skills: readonly Operation[], operation: Operation, has: boolean): Operation[] =>
  OPERATIONS.filter((known) => (known === operation ? has : skills.includes(known)))

/** All facts of one person. */
export const PersonForm = ({ person }: { readonly person: Person }) => {
  const set = (fields: PersonFields) => changeCourse({ part: 'people', do: 'set', id: person.id, fields })
  return (
    <>
      <div class="fields">
        <TextField label={WORDS.name} value={person.name} onValue={(name) => void set({ name })} />
        <TextField
          label={WORDS.from}
          type="time"
          value={person.shift.from}
          onValue={(from) => void set({ shift: { ...person.shift, from } })}
        />
        <TextField
          label={WORDS.to}
          type="time"
          value={person.shift.to}
          onValue={(to) => void set({ shift: { ...person.shift, to } })}
        />
        <TextField
          label={WORDS.setUp}
          type="time"
          hint={WORDS.setUpHint}
          value={person.courseSetUpUntil ?? ''}
          onValue={(until) => void set({ courseSetUpUntil: until === '' ? null : until })}
        />
        <Measured
          schema={personSchema}
          path={['overtimeMin']}
          label="Overtime agreed to, a day, min"
          value={person.overtimeMin}
          onValue={(overtimeMin) => void set({ overtimeMin })}
        />
      </div>
      <fieldset>
        <legend>{WORDS.skills}</legend>
        <div class="fields">
          {OPERATIONS.map((operation) => (
            <Tick
              key={operation}
              label={TASK_WORDS[operation].work}
              checked={person.skills.includes(operation)}
              onValue={(has) => void set({ skills: withSkill(person.skills, operation, has) })}
            />
          ))}
        </div>
      </fieldset>
      <Breaks breaks={person.breaks} onBreaks={(breaks) => void set({ breaks })} />
      <DateList label={WORDS.away} dates={person.awayOn ?? []} onDates={(awayOn) => void set({ awayOn })} />
    </>
  )
}
