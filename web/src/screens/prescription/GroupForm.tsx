import { prescriptionSchema, type Green, type PrescriptionGroup } from '@swardwright/engine'
import { Choice, TextField } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { GreenTicks } from '../../parts/GreenTicks.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { Note } from '../../parts/Note.tsx'
import { ChainEditor } from './ChainEditor.tsx'
import { withStep } from './edit.ts'
import { BladeFields, SandFields, TineFields } from './TineFields.tsx'
import { WORDS } from './words.ts'

type Edit = { readonly group: PrescriptionGroup; readonly onGroup: (group: PrescriptionGroup) => void }

const Openings = ({ group, onGroup }: Edit) => (
  <>
    {group.chain.map((step, at) => {
      const onPasses = (passes: number) => onGroup(withStep(group, at, (one) => ({ ...one, passes })))
      if (step.tines !== undefined)
        return (
          <fieldset key={at}>
            <legend>{step.operation === 'solidTine' ? `${WORDS.tines}, solid` : WORDS.tines}</legend>
            <TineFields
              tines={step.tines}
              passes={step.passes}
              onPasses={onPasses}
              onTines={(tines) => onGroup(withStep(group, at, (one) => ({ ...one, tines })))}
            />
          </fieldset>
        )
      if (step.blades === undefined) return null
      return (
        <fieldset key={at}>
          <legend>{WORDS.blades}</legend>
          <BladeFields
            blades={step.blades}
            passes={step.passes}
            onPasses={onPasses}
            onBlades={(blades) => onGroup(withStep(group, at, (one) => ({ ...one, blades })))}
          />
        </fieldset>
      )
    })}
  </>
)

const Cores = ({ group, onGroup, soil }: Edit & { readonly soil: boolean }) => (
  <fieldset class="stack">
    <legend>{WORDS.cores}</legend>
    <Choice
      label="What becomes of them"
      value={group.cores}
      options={[
        { value: 'lift', label: WORDS.coresOptions.lift },
        { value: 'breakUp', label: WORDS.coresOptions.breakUp },
      ]}
      onValue={(cores) => onGroup({ ...group, cores })}
    />
    {group.cores === 'breakUp' ? (
      <div class="fields">
        <Measured
          schema={prescriptionSchema}
          path={['groups', '0', 'workedBackShare']}
          label={WORDS.workedBack}
          value={group.workedBackShare}
          onValue={(workedBackShare) => onGroup({ ...group, workedBackShare })}
        />
      </div>
    ) : null}
    {group.cores === 'breakUp' && soil ? (
      <Note kind="ochre" word="Care:">
        {WORDS.soilLift}
      </Note>
    ) : null}
  </fieldset>
)

const Sand = ({ group, onGroup }: Edit) => (
  <fieldset class="stack">
    <legend>{WORDS.sand}</legend>
    <Choice
      label={WORDS.sandKind}
      value={group.sand.kind}
      options={[
        { value: 'damp', label: WORDS.sandOptions.damp },
        { value: 'kilnDried', label: WORDS.sandOptions.kilnDried },
      ]}
      onValue={(kind) => onGroup({ ...group, sand: { ...group.sand, kind } })}
    />
    <SandFields sand={group.sand} onSand={(sand) => onGroup({ ...group, sand })} />
  </fieldset>
)

const Greens = ({ group, onGroup, greens }: Edit & { readonly greens: readonly Green[] }) => (
  <div class="stack">
    <TextField
      label={WORDS.groupName}
      value={group.name}
      onValue={(name) => name.trim() !== '' && onGroup({ ...group, name: name.trim() })}
    />
    <Choice
      label={WORDS.greens}
      value={group.greens === 'all' ? 'all' : 'some'}
      options={[
        { value: 'all', label: WORDS.greensAll },
        { value: 'some', label: WORDS.greensSome },
      ]}
      onValue={(which) =>
        onGroup({ ...group, greens: which === 'all' ? 'all' : greens.slice(0, 1).map((green) => green.id) })
      }
    />
    {group.greens === 'all' ? null : (
      <GreenTicks
        label={WORDS.greens}
        greens={greens}
        chosen={group.greens}
        onChosen={(chosen) => chosen.length > 0 && onGroup({ ...group, greens: chosen })}
      />
    )}
  </div>
)

/** Everything that is done to one group of greens. */
export const GroupForm = (
  props: Edit & { readonly greens: readonly Green[]; readonly worked: readonly Green[] },
) => {
  const { group, onGroup } = props
  return (
    <div class="stack">
      <Openings group={group} onGroup={onGroup} />
      <Cores
        group={group}
        onGroup={onGroup}
        soil={props.worked.some((green) => green.rootzone.kind === 'soil')}
      />
      <Sand group={group} onGroup={onGroup} />
      <div>
        <Fold
          summary={
            <span>
              {WORDS.chain} <span class="quiet small">{group.chain.length} steps</span>
            </span>
          }
        >
          {() => <ChainEditor group={group} onGroup={onGroup} />}
        </Fold>
        <Fold
          summary={
            <span>
              {WORDS.greens} <span class="quiet small">{props.worked.length}</span>
            </span>
          }
        >
          {() => <Greens group={group} onGroup={onGroup} greens={props.greens} />}
        </Fold>
      </div>
    </div>
  )
}
