import { settingsSchema, type Settings } from '@swardwright/engine'
import { TextField, Tick } from '../../parts/fields.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { useCourse } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { RULE_FIGURES, WORDS } from './words.ts'

/** The rules that plans keep. */
export const WorkRules = () => {
  const { settings } = useCourse()
  const set = (fields: Partial<Settings>) => changeCourse({ part: 'settings', do: 'set', fields })
  return (
    <div class="stack">
      <div class="fields">
        {RULE_FIGURES.map(([field, label]) => (
          <Measured
            key={field}
            schema={settingsSchema}
            path={[field]}
            label={label}
            value={settings[field]}
            onValue={(value) => void set({ [field]: value })}
          />
        ))}
        <TextField
          label={WORDS.dark}
          type="time"
          hint={WORDS.darkHint}
          value={settings.darkFrom ?? ''}
          onValue={(time) => void set({ darkFrom: time === '' ? null : time })}
        />
      </div>
      <Tick
        label={WORDS.night}
        checked={settings.mayStandDryNight}
        onValue={(mayStandDryNight) => void set({ mayStandDryNight })}
      />
    </div>
  )
}
