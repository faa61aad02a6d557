import { comingBack, dayWords } from '@swardwright/present'
import { CopyText } from '../../parts/CopyText.tsx'
import { Part } from '../../parts/Page.tsx'
import { nowMs, today } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { weather } from '../../state/weather.ts'
import { ComingBack } from '../photos/ComingBack.tsx'
import './after-work.css'
import { WORDS } from './words.ts'

const DAY_MS = 86_400_000

const STATE_COLOUR = {
  open: 'leaf',
  planned: 'leaf',
  working: 'rust',
  putOff: 'rust',
  recovering: 'ochre',
} as const

/** 'finished Mon 10 Aug, day 7'; the day of the work is day 0. */
const finishedWords = (finished: string): string =>
  `finished ${dayWords(finished)}, day ${Math.round((Date.parse(today.value) - Date.parse(finished)) / DAY_MS)}`

/** After the last day: what to tell the secretary, and each green with when it is expected back, its latest photos, and the way to take one. */
export const AfterWork = () => {
  const { text, greens } = comingBack({
    course: useCourse(),
    facts: facts.value,
    weather: weather.value,
    nowMs: nowMs.value,
  })
  return (
    <div class="wide">
      <Part title={WORDS.forSecretary} class="tight">
        <CopyText text={text} />
      </Part>
      <Part title={WORDS.greens}>
        <ul class="rows coming-back">
          {greens.map(({ id, called, state, word, finished, back }) => (
            <li key={id}>
              <div class="line">
                <a class="name" href={`/green/${encodeURIComponent(id)}`}>
                  {called}
                </a>
                <b class="rest">
                  <span class={STATE_COLOUR[state]}>{back === '' ? word : back}</span>
                </b>
                <span class="quiet small below">{finished === null ? '' : finishedWords(finished)}</span>
                <div class="needs">
                  <ComingBack green={id} />
                </div>
              </div>
            </li>
          ))}
        </ul>
      </Part>
    </div>
  )
}
