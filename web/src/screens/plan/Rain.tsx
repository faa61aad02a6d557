import { addDays, instantOf, isoWithOffset } from '@swardwright/engine'
import { clockRange, dateAt, dayWords, figureOf, unitMark } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { rainMoved, showersOf, type Spell } from '../../compute/typed-rain.ts'
import { Select, TextField } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { NumberField } from '../../parts/NumberField.tsx'
import { units, useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { planChoices, planNow, rainAhead, usualStart } from '../../state/plan.ts'
import { record } from '../../state/record.ts'
import { weather } from '../../state/weather.ts'
import { ForecastFile } from './ForecastFile.tsx'
import { WORDS } from './words.ts'

const minuteOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5))

/** Moves the rain of a day, writes that down, and plans again. */
const moveRain = async (date: string, byHours: number, timeZone: string): Promise<void> => {
  const hours = weather.value
  if (hours === null) return
  const moved = rainMoved(hours, date, byHours, timeZone)
  await record('rainTyped', { ...moved, spells: [...moved.spells] })
  await planNow()
}

const typeRain = async (date: string, spells: Spell[]): Promise<void> => {
  await record('rainTyped', { from: date, to: date, spells })
  await planNow()
}

/** Strikes out what was typed since the forecast, newest first, and plans again. */
const backToForecast = async (): Promise<void> => {
  for (const typed of facts.value.typedRain.toReversed())
    await record('struck', { entry: typed.entry, reason: WORDS.back })
  await planNow()
}

const Now = () => {
  const { timeZone } = useCourse()
  const showers = showersOf(rainAhead.value)
  if (weather.value === null) return <p>{WORDS.noForecast}</p>
  if (showers.length === 0) return <p>{WORDS.rainNone}</p>
  return (
    <ul class="rows">
      {showers.map((shower) => (
        <li key={shower.start}>
          <div class="line rain-line">
            <span class="name rain">{dayWords(dateAt(shower.start, timeZone))}</span>
            <span>{clockRange(shower.start, shower.finish, timeZone)}</span>
            <span class="rest">
              up to {figureOf('rain', shower.mostMmPerH, units.value)} {unitMark('rain', units.value)} an hour
            </span>
          </div>
        </li>
      ))}
    </ul>
  )
}

const MOVES = [
  [-2, WORDS.earlier2],
  [-1, WORDS.earlier1],
  [1, WORDS.later1],
  [2, WORDS.later2],
] as const

const TypeIn = ({ date }: { readonly date: string }) => {
  const { timeZone } = useCourse()
  const [from, setFrom] = useState('13:00')
  const [to, setTo] = useState('18:00')
  const [mmPerH, setRate] = useState(1.5)
  const at = (time: string) => isoWithOffset(instantOf(date, minuteOf(time), timeZone), timeZone)
  const inOrder = minuteOf(from) < minuteOf(to)
  return (
    <>
      <div class="fields">
        <TextField label={WORDS.fromTime} type="time" value={from} onValue={setFrom} />
        <TextField label={WORDS.toTime} type="time" value={to} onValue={setTo} />
        <NumberField label={WORDS.rate} unit="mm/h" value={mmPerH} min={0.1} max={100} onValue={setRate} />
      </div>
      {inOrder ? null : <p class="wrong">Until: later than {from}</p>}
      <div class="row">
        <button
          type="button"
          class="thin"
          disabled={!inOrder}
          onClick={() => void typeRain(date, [{ start: at(from), finish: at(to), mmPerH }])}
        >
          {WORDS.take}
        </button>
        <button type="button" class="thin" onClick={() => void typeRain(date, [])}>
          {WORDS.dryDay}
        </button>
      </div>
    </>
  )
}

/** The rain that the plan goes by: to read, to move, to type in. */
export const Rain = () => {
  const { timeZone } = useCourse()
  const first = planChoices.value.start ?? usualStart.value
  const days = Array.from({ length: planChoices.value.days }, (_, at) => addDays(first, at))
  const firstWet = rainAhead.value[0]
  const [chosen, setChosen] = useState<string | null>(null)
  const date = chosen ?? (firstWet === undefined ? first : dateAt(firstWet.start, timeZone))
  const typed = facts.value.typedRain.length > 0
  return (
    <div class="stack">
      <p class="small quiet no-print">{typed ? WORDS.typed : WORDS.rainLead}</p>
      <Now />
      <div class="stack no-print">
        <Select
          label={WORDS.day}
          value={date}
          options={days.map((value) => ({ value, label: dayWords(value) }))}
          onValue={setChosen}
        />
        <div class="tight" role="group" aria-label={WORDS.move}>
          <div class="four">
            {MOVES.map(([hours, word]) => (
              <button
                key={hours}
                type="button"
                class="thin"
                disabled={weather.value === null}
                onClick={() => void moveRain(date, hours, timeZone)}
              >
                {word}
              </button>
            ))}
            {typed ? (
              <button type="button" class="thin" onClick={() => void backToForecast()}>
                {WORDS.back}
              </button>
            ) : null}
          </div>
        </div>
        <div>
          <Fold summary={WORDS.typeIn}>{() => <TypeIn date={date} />}</Fold>
          <Fold summary={WORDS.forecastFile}>{() => <ForecastFile />}</Fold>
        </div>
      </div>
    </div>
  )
}
