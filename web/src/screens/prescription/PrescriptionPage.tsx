import { usualPrescription, type Prescription } from '@swardwright/engine'
import { counted } from '@swardwright/present'
import { TextField } from '../../parts/fields.tsx'
import { newId } from '../../parts/new-id.ts'
import { Page, Part } from '../../parts/Page.tsx'
import { greensInOrder, useCourse } from '../../state/course.ts'
import { prescription, settlePrescription } from '../../state/prescription.ts'
import { greensOf, withGroup } from './edit.ts'
import { GroupForm } from './GroupForm.tsx'
import { LiveStrip, Totals } from './Totals.tsx'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'
import { decides } from '../../state/access.ts'

const save = (changed: Prescription) => void settlePrescription(changed)

const withNewGroup = (current: Prescription, firstGreen: string): Prescription => {
  const [model] = current.groups
  if (model === undefined) return current
  const id = newId(
    WORDS.newGroup,
    current.groups.map((group) => group.id),
  )
  return {
    ...current,
    groups: [{ ...model, id, name: WORDS.newGroup, greens: [firstGreen] }, ...current.groups],
  }
}

const Groups = ({ current }: { readonly current: Prescription }) => {
  const greens = greensInOrder.value
  const ids = greens.map((green) => green.id)
  return (
    <div class="wide">
      {current.groups.map((group) => {
        const worked = new Set(greensOf(current, group, ids))
        return (
          <Part
            key={group.id}
            title={group.name}
            aside={<span class="quiet small">{counted(worked.size, 'green', 'greens')}</span>}
          >
            <GroupForm
              group={group}
              greens={greens}
              worked={greens.filter((green) => worked.has(green.id))}
              onGroup={(changed) => save(withGroup(current, group.id, () => changed))}
            />
            {current.groups.length === 1 ? null : (
              <p>
                <button
                  type="button"
                  class="thin"
                  onClick={() =>
                    save({ ...current, groups: current.groups.filter((one) => one.id !== group.id) })
                  }
                >
                  {WORDS.removeGroup}
                </button>
              </p>
            )}
          </Part>
        )
      })}
      <button type="button" onClick={() => ids[0] !== undefined && save(withNewGroup(current, ids[0]))}>
        {WORDS.addGroup}
      </button>
      <TextField
        label="Name of the prescription"
        value={current.name}
        onValue={(name) => name.trim() !== '' && save({ ...current, name: name.trim() })}
      />
    </div>
  )
}

/** What is done to which greens, with what it comes to beside it. */
export const PrescriptionPage = () => {
  const course = useCourse()
  const current = prescription.value
  if (current === null)
    return (
      <Page title={WORDS.title}>
        <div class="stack">
          <p>
            {WORDS.none} {WORDS.noneLead}
          </p>
          {decides.value ? (
            <button type="button" class="primary" onClick={() => save(usualPrescription(course))}>
              {WORDS.startUsual}
            </button>
          ) : null}
        </div>
      </Page>
    )
  return (
    <Page title={WORDS.title} over={current.name}>
      <div class="columns main-left">
        <Deciding>
          <Groups current={current} />
        </Deciding>
        <div class="beside">
          <Totals />
        </div>
      </div>
      <LiveStrip />
    </Page>
  )
}
