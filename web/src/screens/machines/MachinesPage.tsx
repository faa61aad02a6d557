import { TYPICAL_MACHINES, type Machine } from '@swardwright/engine'
import { counted, figureOf, MACHINE_WORDS, unitMark } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { Select } from '../../parts/fields.tsx'
import { NamedFolds } from '../../parts/NamedFolds.tsx'
import { newId } from '../../parts/new-id.ts'
import { Page } from '../../parts/Page.tsx'
import { units, useCourse } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { KINDS } from './kinds.ts'
import { MachineForm } from './MachineForm.tsx'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'
import { decides } from '../../state/access.ts'

const put = (value: Machine) => changeCourse({ part: 'machines', do: 'put', value })

const essentials = (machine: Machine): string =>
  [
    MACHINE_WORDS[machine.kind].name,
    `${machine.widthM} m wide`,
    ...(machine.hopperT === undefined
      ? []
      : [`${figureOf('sand', machine.hopperT, units.value)} ${unitMark('sand', units.value)} hopper`]),
    ...((machine.outOn?.length ?? 0) > 0
      ? [`out on ${counted(machine.outOn?.length ?? 0, 'day', 'days')}`]
      : []),
  ].join(', ')

const AddMachine = ({ machines }: { readonly machines: readonly Machine[] }) => {
  const [kind, setKind] = useState<Machine['kind']>('corer')
  const taken = machines.map((machine) => machine.id)
  const add = () => {
    const { title: name, ...paces } = TYPICAL_MACHINES[kind]
    void put({ ...paces, id: newId(name, taken), name, kind })
  }
  return (
    <div class="stack">
      <div class="row" style={{ alignItems: 'end' }}>
        <Select
          label={WORDS.kind}
          value={kind}
          options={KINDS.map((value) => ({ value, label: MACHINE_WORDS[value].name }))}
          onValue={setKind}
        />
        <button type="button" onClick={add}>
          {WORDS.add}
        </button>
      </div>
      <p class="small quiet">{WORDS.typical}</p>
    </div>
  )
}

/** The shed: machines and their paces. */
export const MachinesPage = () => {
  const { machines } = useCourse()
  return (
    <Page title={WORDS.title} lead={WORDS.lead}>
      <div class="wide">
        <NamedFolds
          things={machines}
          none={WORDS.none}
          essentials={essentials}
          behind={(machine) => (
            <Deciding>
              <MachineForm machine={machine} />
              <div class="row">
                <button
                  type="button"
                  class="thin"
                  onClick={() =>
                    void put({
                      ...machine,
                      id: newId(
                        machine.name,
                        machines.map((other) => other.id),
                      ),
                      name: `${machine.name} (second)`,
                    })
                  }
                >
                  {WORDS.again}
                </button>
                <button
                  type="button"
                  class="thin"
                  onClick={() => void changeCourse({ part: 'machines', do: 'remove', id: machine.id })}
                >
                  {WORDS.remove}
                </button>
              </div>
            </Deciding>
          )}
        />
        {decides.value ? <AddMachine machines={machines} /> : null}
      </div>
    </Page>
  )
}
