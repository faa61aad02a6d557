import { machineSchema, type Machine } from '@swardwright/engine'
import { MACHINE_WORDS, type QuantityKind } from '@swardwright/present'
import { DateList } from '../../parts/DateList.tsx'
import { Select, TextField, Tick } from '../../parts/fields.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { changeCourse } from '../../state/record.ts'
import { KINDS } from './kinds.ts'
import { WORDS } from './words.ts'

type MachineFields = Partial<Omit<Machine, 'id'>>

const FIGURES = [
  'widthM',
  'overlapM',
  'speedMPerS',
  'turnS',
  'perGreenMin',
  'travelMPerS',
  'setUpMin',
  'crew',
] as const satisfies readonly (keyof Machine)[]

const SOMETIMES = ['strokesPerMin', 'hopperT', 'loadMin', 'loadedTravelMPerS', 'vibrationMPerS2'] as const

const KIND_OF: Partial<Readonly<Record<string, QuantityKind>>> = { hopperT: 'sand' }

const asks = (kind: Machine['kind'], field: (typeof SOMETIMES)[number]): boolean =>
  field === 'vibrationMPerS2' ||
  (field === 'strokesPerMin' ? kind === 'corer' || kind === 'deepTiner' : kind === 'dresser')

/** All facts of one machine. */
export const MachineForm = ({ machine }: { readonly machine: Machine }) => {
  const set = (fields: MachineFields) => changeCourse({ part: 'machines', do: 'set', id: machine.id, fields })
  const clear = (field: (typeof SOMETIMES)[number]) =>
    changeCourse({ part: 'machines', do: 'set', id: machine.id, fields: {}, clear: [field] })
  return (
    <>
      <div class="fields">
        <TextField label={WORDS.name} value={machine.name} onValue={(name) => void set({ name })} />
        <Select
          label={WORDS.kind}
          value={machine.kind}
          options={KINDS.map((kind) => ({ value: kind, label: MACHINE_WORDS[kind].name }))}
          onValue={(kind) => void set({ kind })}
        />
      </div>
      <div class="fields">
        {FIGURES.map((field) => (
          <Measured
            key={field}
            schema={machineSchema}
            path={[field]}
            value={machine[field]}
            onValue={(value) => void set({ [field]: value })}
          />
        ))}
        {SOMETIMES.filter((field) => asks(machine.kind, field)).map((field) => (
          <Measured
            key={field}
            schema={machineSchema}
            path={[field]}
            value={machine[field] ?? null}
            onValue={(value) => void set({ [field]: value })}
            onEmpty={() => void clear(field)}
            {...(KIND_OF[field] === undefined ? {} : { kind: KIND_OF[field] })}
          />
        ))}
      </div>
      {machine.kind === 'dresser' ? (
        <Tick
          label={WORDS.spinner}
          checked={machine.spinner ?? false}
          onValue={(spinner) => void set({ spinner })}
        />
      ) : null}
      <DateList label={WORDS.outOn} dates={machine.outOn ?? []} onDates={(outOn) => void set({ outOn })} />
    </>
  )
}
