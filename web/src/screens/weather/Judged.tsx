import { WEATHER_SETTING_LIST, WEATHER_SETTINGS, weatherSettings } from '@swardwright/engine'
import { Measured } from '../../parts/Measured.tsx'
import { useCourse } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { WORDS } from './words.ts'

/** The rain stop is a rule of the work, set with the others under Settings. */
const ELSEWHERE = 'rainStopMmPerH'

/** Every limit that hours are judged by, with its unit, its range and what its start value stands on. */
export const Judged = () => {
  const { settings } = useCourse()
  const judged = weatherSettings(settings.weather)
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.judgedLead}</p>
      <div class="fields">
        {Object.entries(WEATHER_SETTING_LIST).map(([name, setting]) =>
          name === ELSEWHERE ? null : (
            <Measured
              key={name}
              schema={WEATHER_SETTINGS}
              path={[name]}
              value={
                settings.weather[name] ??
                (judged.ok ? Object.entries(judged.value).find(([key]) => key === name)?.[1] : undefined) ??
                setting.default
              }
              hint={`${WORDS.start} ${setting.default}; ${setting.basis}`}
              onValue={(value) =>
                void changeCourse({
                  part: 'settings',
                  do: 'set',
                  fields: { weather: { ...settings.weather, [name]: value } },
                })
              }
            />
          ),
        )}
      </div>
    </div>
  )
}
