import { prescriptionSchema, type PrescriptionGroup } from '@swardwright/engine'
import { Fold } from '../../parts/Fold.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { Note } from '../../parts/Note.tsx'
import type { Step } from './edit.ts'
import { WORDS } from './words.ts'

type Tines = NonNullable<Step['tines']>

const AT = ['groups', '0', 'chain', '0'] as const

/** The tines of one step: both diameters are asked for, since the hole is wider than the core that leaves it. */
export const TineFields = (props: {
  readonly tines: Tines
  readonly passes: number
  readonly onTines: (tines: Tines) => void
  readonly onPasses: (passes: number) => void
}) => {
  const { tines } = props
  const set = (fields: Partial<Tines>) => props.onTines({ ...tines, ...fields })
  const field = (
    name: keyof Tines,
    label: string,
    extra: { readonly kind?: 'tine' | 'depth'; readonly hint?: string } = {},
  ) => (
    <Measured
      schema={prescriptionSchema}
      path={[...AT, 'tines', name]}
      label={label}
      value={tines[name]}
      onValue={(value) => set({ [name]: value })}
      {...extra}
    />
  )
  return (
    <>
      <div class="fields">
        {field('depthMm', WORDS.depth, { kind: 'depth' })}
        {field('holeDiameterMm', WORDS.hole, { kind: 'tine' })}
        {field('coreDiameterMm', WORDS.core, { kind: 'tine', hint: WORDS.coreHint })}
        {field('acrossMm', WORDS.across, { kind: 'tine' })}
        {field('alongMm', WORDS.along, { kind: 'tine' })}
        {field('setLifeGreens', WORDS.life)}
        <Measured
          schema={prescriptionSchema}
          path={[...AT, 'passes']}
          label={WORDS.passes}
          value={props.passes}
          onValue={props.onPasses}
        />
      </div>
      {tines.coreDiameterMm > tines.holeDiameterMm ? (
        <Note kind="rust" word="No:" live>
          {WORDS.coreTooWide}
        </Note>
      ) : null}
    </>
  )
}

type Blades = NonNullable<Step['blades']>

/** The blades of one scarifying step. */
export const BladeFields = (props: {
  readonly blades: Blades
  readonly passes: number
  readonly onBlades: (blades: Blades) => void
  readonly onPasses: (passes: number) => void
}) => {
  const field = (name: keyof Blades, label: string, kind: 'tine' | 'depth') => (
    <Measured
      schema={prescriptionSchema}
      path={[...AT, 'blades', name]}
      label={label}
      kind={kind}
      value={props.blades[name]}
      onValue={(value) => props.onBlades({ ...props.blades, [name]: value })}
    />
  )
  return (
    <div class="fields">
      {field('depthMm', WORDS.depth, 'depth')}
      {field('bladeWidthMm', WORDS.bladeWidth, 'tine')}
      {field('bladeSpacingMm', WORDS.bladeSpacing, 'tine')}
      <Measured
        schema={prescriptionSchema}
        path={[...AT, 'passes']}
        label={WORDS.passes}
        value={props.passes}
        onValue={props.onPasses}
      />
    </div>
  )
}

type Sand = PrescriptionGroup['sand']

/** The figures of the sand. */
export const SandFields = (props: { readonly sand: Sand; readonly onSand: (sand: Sand) => void }) => {
  const field = (
    name: Exclude<keyof Sand, 'kind'>,
    label: string,
    extra: { readonly kind?: 'tine'; readonly hint?: string } = {},
  ) => (
    <Measured
      schema={prescriptionSchema}
      path={['groups', '0', 'sand', name]}
      label={label}
      value={props.sand[name]}
      onValue={(value) => props.onSand({ ...props.sand, [name]: value })}
      {...extra}
    />
  )
  return (
    <>
      <div class="fields">
        {field('surfaceMm', WORDS.surface, { kind: 'tine' })}
        {field('fillFactor', WORDS.fill, { hint: WORDS.fillHint })}
      </div>
      <div>
        <Fold summary={WORDS.moreOfSand}>
          {() => (
            <div class="fields">
              {field('lossPercent', WORDS.loss)}
              {field('moisturePercent', WORDS.moisture)}
              {field('bulkDensityKgPerM3', WORDS.density)}
            </div>
          )}
        </Fold>
      </div>
    </>
  )
}
