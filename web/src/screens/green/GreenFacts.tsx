import { greenSchema, type Green } from '@swardwright/engine'
import { Choice, TextField, Tick } from '../../parts/fields.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { useCourse } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { WORDS } from './words.ts'

type GreenFields = Partial<Omit<Green, 'id'>>

const optionsOf = <T extends string>(words: Readonly<Record<T, string>>) =>
  (Object.entries(words) as [T, string][]).map(([value, label]) => ({ value, label }))

/** Records a change of one green. */
export const setGreen = (green: Green, fields: GreenFields): Promise<string> =>
  changeCourse({ part: 'greens', do: 'set', id: green.id, fields })

/** The facts of a green that change what is right for it. */
export const GreenFacts = ({ green }: { readonly green: Green }) => {
  const set = (fields: GreenFields) => void setGreen(green, fields)
  const others = useCourse().greens.filter((other) => other.id !== green.id)
  return (
    <div class="stack">
      <div class="fields">
        <TextField
          label={WORDS.name}
          value={green.name}
          check={(name) =>
            name.trim() === ''
              ? 'Name: a green needs one'
              : others.some((other) => other.name === name.trim())
                ? `Name: ‘${name.trim()}’ is another green’s already`
                : null
          }
          onValue={(name) => set({ name: name.trim() })}
        />
        <Measured
          schema={greenSchema}
          path={['areaM2']}
          label={WORDS.area}
          kind="area"
          value={green.areaM2}
          onValue={(areaM2) => set({ areaM2 })}
        />
        <Measured
          schema={greenSchema}
          path={['rootzone', 'goodDepthMm']}
          label={WORDS.goodDepth}
          kind="depth"
          value={green.rootzone.goodDepthMm}
          onValue={(goodDepthMm) => set({ rootzone: { ...green.rootzone, goodDepthMm } })}
        />
      </div>
      <Choice
        label={WORDS.rootzone}
        value={green.rootzone.kind}
        options={optionsOf(WORDS.rootzoneOptions)}
        onValue={(kind) => set({ rootzone: { ...green.rootzone, kind } })}
      />
      <Choice
        label={WORDS.drainage}
        value={green.drainage}
        options={optionsOf(WORDS.drainageOptions)}
        onValue={(drainage) => set({ drainage })}
      />
      <Choice
        label={WORDS.shade}
        value={green.shade}
        options={optionsOf(WORDS.shadeOptions)}
        onValue={(shade) => set({ shade })}
      />
      <Tick label={WORDS.weak} checked={green.weak} onValue={(weak) => set({ weak })} />
    </div>
  )
}
