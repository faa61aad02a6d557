import type { OneMore, PlanRisk } from '@swardwright/engine'
import {
  busiestSentence,
  dayRiskSentence,
  dayWords,
  oneMoreWords,
  riskCurve,
  riskSourceWords,
  whatIfRows,
} from '@swardwright/present'
import { useEffect, useState } from 'preact/hooks'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { Note } from '../../parts/Note.tsx'
import { NumberField } from '../../parts/NumberField.tsx'
import { isWide } from '../../shell/wide.ts'
import { greenNames, useCourse } from '../../state/course.ts'
import { planErrorSentence } from '../../state/error-words.ts'
import {
  askOneMore,
  askRisk,
  makingSafe,
  oneMore,
  planSafely,
  risk,
  riskQuestion,
  riskWish,
} from '../../state/risk.ts'
import { weather } from '../../state/weather.ts'
import { WORDS } from './words.ts'
import { decides } from '../../state/access.ts'

const DESK_PX = 520
const PHONE_PX = 340

/** One day: the sentence, and its curve when asked for. */
const Day = (props: { readonly day: PlanRisk['days'][number]; readonly told: PlanRisk }) => {
  const { day, told } = props
  const { timeZone } = useCourse()
  const [open, setOpen] = useState(false)
  return (
    <li class="tight">
      <p class={day.chance > told.level ? 'ochre' : undefined}>{dayRiskSentence(day, told, timeZone)}.</p>
      <button type="button" class="thin" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? WORDS.hideCurve : `${WORDS.showCurve}: ${dayWords(day.date)}`}
      </button>
      {open ? (
        <>
          <DrawingView
            drawing={riskCurve({
              day,
              level: told.level,
              timeZone,
              widthPx: isWide.value ? DESK_PX : PHONE_PX,
              greenNames: greenNames.value,
            })}
            class="natural"
          />
          <p class="small quiet">{WORDS.curveLead}</p>
        </>
      ) : null}
    </li>
  )
}

/** The machine that is busiest, and one in the crew: what a manager would hire first. */
const usualChanges = (told: PlanRisk, firstPerson: string | undefined): readonly OneMore[] => {
  const machine = told.uses.find((use) => use.machine !== null)?.machine ?? null
  return [
    ...(machine === null ? [] : [{ kind: 'machine' as const, like: machine }]),
    ...(firstPerson === undefined ? [] : [{ kind: 'person' as const, like: firstPerson }]),
  ]
}

const OneThingMore = ({ told }: { readonly told: PlanRisk }) => {
  const course = useCourse()
  const mostSkilled = [...course.people].sort((a, b) => b.skills.length - a.skills.length)[0]?.id
  const changes = usualChanges(told, mostSkilled)
  const answer = oneMore.value.value
  return (
    <div class="stack">
      <p>{busiestSentence(told, course)}.</p>
      <button type="button" disabled={oneMore.pending.value} onClick={() => askOneMore(changes)}>
        {oneMore.pending.value ? WORDS.reckoning : WORDS.askOneMore}
      </button>
      <p class="small quiet">{changes.map((change) => oneMoreWords(change, course)).join('; ')}</p>
      {answer === null || !answer.ok ? null : (
        <table>
          <thead>
            <tr>
              <th scope="col">{WORDS.week}</th>
              <th scope="col">{WORDS.lastFinish}</th>
              <th scope="col">{WORDS.greensDone}</th>
              <th scope="col">{WORDS.overtime}</th>
            </tr>
          </thead>
          <tbody>
            {whatIfRows(answer.value, course).map(({ week, finish, greens, overtime }) => (
              <tr key={week}>
                <th scope="row">{week}</th>
                <td>{finish}</td>
                <td>{greens}</td>
                <td>{overtime}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}

const Told = ({ told }: { readonly told: PlanRisk }) => (
  <div class="stack">
    <p class="small quiet">
      {WORDS.riskLead} {riskSourceWords(told)}.
    </p>
    <ul class="rows">
      {told.days.map((day) => (
        <Day key={day.date} day={day} told={told} />
      ))}
    </ul>
    {decides.value && told.days.some(({ chance }) => chance > told.level) ? (
      <button type="button" disabled={makingSafe.value} onClick={() => void planSafely()}>
        {makingSafe.value ? WORDS.makingSafe : WORDS.planSafely}
      </button>
    ) : null}
    <OneThingMore told={told} />
  </div>
)

/** If the sky is not as forecast: the chance of a caught green by day, a plan under a level, and what one thing more would buy. */
export const Risk = () => {
  const answer = risk.told.value
  useEffect(askRisk, [riskQuestion.value])
  if (weather.value === null) return <p>{WORDS.riskNoForecast}</p>
  return (
    <div class="stack">
      <NumberField
        label={WORDS.level}
        unit="%"
        hint={WORDS.levelHint}
        value={riskWish.value.level * 100}
        min={0.5}
        max={50}
        onValue={(percent) => {
          riskWish.value = { ...riskWish.value, level: percent / 100 }
        }}
      />
      {risk.pending.value ? <p role="status">{WORDS.reckoning}</p> : null}
      {risk.fault.value === null ? null : (
        <Note kind="rust" word={WORDS.fault} live>
          {risk.fault.value}
        </Note>
      )}
      {answer === null ? null : answer.ok ? (
        <Told told={answer.value} />
      ) : answer.error.type === 'noWeather' ? null : (
        <Note kind="rust" word={WORDS.broken} live>
          {planErrorSentence(answer.error)}.
        </Note>
      )}
    </div>
  )
}
