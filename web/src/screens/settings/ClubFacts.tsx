import { instantOf, isoWithOffset, isTimeZone } from '@swardwright/engine'
import { clock, dateAt } from '@swardwright/present'
import { Choice, TextField } from '../../parts/fields.tsx'
import { useCourse } from '../../state/course.ts'
import { nowMs } from '../../state/clock.ts'
import { changeCourse } from '../../state/record.ts'
import { WORDS } from './words.ts'

/** Name, place in time, and the clock that the pages go by. */
export const ClubFacts = () => {
  const course = useCourse()
  const set = (fields: { name?: string; timeZone?: string; now?: string | null }) =>
    changeCourse({ part: 'facts', do: 'set', fields })
  const hold = (date: string, time: string) => {
    const minuteOfDay = Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5))
    return set({ now: isoWithOffset(instantOf(date, minuteOfDay, course.timeZone), course.timeZone) })
  }
  const [date, time] = [dateAt(nowMs.value, course.timeZone), clock(nowMs.value, course.timeZone)]
  return (
    <div class="stack">
      <TextField label={WORDS.name} value={course.name} onValue={(name) => void set({ name })} />
      <TextField
        label={WORDS.timeZone}
        value={course.timeZone}
        check={(text) => (isTimeZone(text) ? null : WORDS.timeZoneWrong)}
        onValue={(timeZone) => void set({ timeZone })}
      />
      <Choice
        label={WORDS.now}
        value={course.now === null ? 'real' : 'held'}
        options={[
          { value: 'real', label: WORDS.nowReal },
          { value: 'held', label: WORDS.nowFixed },
        ]}
        onValue={(which) => void (which === 'real' ? set({ now: null }) : hold(date, time))}
      />
      {course.now === null ? null : (
        <div class="fields">
          <TextField
            label={`${WORDS.nowAt}: day`}
            type="date"
            value={date}
            onValue={(day) => void hold(day, time)}
          />
          <TextField
            label={`${WORDS.nowAt}: time`}
            type="time"
            value={time}
            onValue={(at) => void hold(date, at)}
          />
        </div>
      )}
    </div>
  )
}
