import type { WeatherAnswer } from '@swardwright/journal'
import { ageWords, dayAndClock, fetchedWords, weatherProblemWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { Fold } from '../../parts/Fold.tsx'
import { Note } from '../../parts/Note.tsx'
import { realMs } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import {
  askWeather,
  goByServed,
  isNewer,
  letWeatherBeAsked,
  servedForecast,
  serverAway,
} from '../../state/served-weather.ts'
import { WORDS } from './words.ts'
import { decides, isManager } from '../../state/access.ts'

const KIND = { off: 'ink', fresh: 'leaf', stale: 'ochre', offline: 'ochre', never: 'rust' } as const

/** From whom, when it came, and what is wrong. */
const State = ({ answer }: { readonly answer: WeatherAnswer }) => {
  const { timeZone } = useCourse()
  const { state, provider, fetchedAt, problem } = answer
  const fetchedMs = fetchedAt === null ? null : Date.parse(fetchedAt)
  return (
    <Note kind={KIND[state]} word={WORDS[state]} live>
      {state === 'off' ? (
        WORDS.offLead(provider ?? 'a weather service')
      ) : (
        <>
          {fetchedMs === null
            ? ''
            : `forecast of ${provider}, ${fetchedWords(fetchedMs, realMs.value, timeZone)}, ${ageWords(fetchedMs, realMs.value)}. `}
          {problem === null ? '' : `${weatherProblemWords(problem, timeZone)}.`}
        </>
      )}
    </Note>
  )
}

/** Turns the service on or off, where the server lets this person. */
const Switch = ({ on }: { readonly on: boolean }) => {
  const [wrong, setWrong] = useState<string | null>(null)
  const turn = async () => {
    setWrong(await letWeatherBeAsked(!on))
  }
  return (
    <>
      <div class="row">
        <button type="button" class="thin" onClick={() => void turn()}>
          {on ? WORDS.turnOff : WORDS.turnOn}
        </button>
        {on ? (
          <button type="button" class="thin" onClick={() => void askWeather()}>
            {WORDS.askAgain}
          </button>
        ) : null}
      </div>
      {wrong === null ? null : (
        <p class="wrong" role="alert">
          {wrong}.
        </p>
      )}
    </>
  )
}

/** Which forecast plans go by. */
const InForce = () => {
  const { timeZone } = useCourse()
  const inForce = facts.value.forecast
  if (inForce === null) return <p>{WORDS.inForceNone}</p>
  return (
    <p>
      {WORDS.inForce} {inForce.value.name ?? 'a forecast'}, {dayAndClock(inForce.at, timeZone)}.
    </p>
  )
}

/** What was sent of the club, and the switch: behind the state while the service is on. */
export const SourceDetails = () => {
  const answer = servedForecast.value
  if (answer === null || answer.state === 'off') return null
  const { placeSent } = answer
  return (
    <Fold summary={WORDS.details}>
      {() => (
        <>
          {placeSent === null ? null : <p>{WORDS.sent(placeSent.latitudeDeg, placeSent.longitudeDeg)}</p>}
          <InForce />
          {isManager.value ? <Switch on /> : null}
        </>
      )}
    </Fold>
  )
}

/** Where the weather shown comes from, how old it is, and what plans go by. */
export const SourceLine = () => {
  const answer = servedForecast.value
  return (
    <div class="stack">
      {serverAway.value ? (
        <Note kind="ochre" word={WORDS.away} live>
          {WORDS.awayKept}
        </Note>
      ) : null}
      {answer === null ? null : (
        <>
          <State answer={answer} />
          {answer.state === 'off' && isManager.value ? <Switch on={false} /> : null}
        </>
      )}
      {isNewer.value ? (
        <Note kind="rain" word={WORDS.newer}>
          {WORDS.newerLead}{' '}
          {decides.value ? (
            <button type="button" class="thin" onClick={() => void goByServed()}>
              {WORDS.goBy}
            </button>
          ) : null}
        </Note>
      ) : (
        <InForce />
      )}
    </div>
  )
}
