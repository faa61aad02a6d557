import type { HistoryOutcome } from '@swardwright/journal'
import { useState } from 'preact/hooks'
import { archiveYears } from '../../compute/sky-day.ts'
import { NumberField } from '../../parts/NumberField.tsx'
import { callServer } from '../../journal/server.ts'
import { today } from '../../state/clock.ts'
import { courseId } from '../../state/journal.ts'
import { askHistory, servedForecast } from '../../state/served-weather.ts'
import type { BroughtIn } from './OutcomeNote.tsx'
import { HISTORY_WORDS as W, WORDS } from './words.ts'

const fetchYears = async (years: number): Promise<HistoryOutcome> => {
  const course = courseId.value
  if (course === null) return { kept: null, why: WORDS.noServer }
  const answer = await callServer('fetchHistory', {
    params: { course },
    body: archiveYears(today.value, years),
  })
  if (!answer.ok)
    return {
      kept: null,
      why: answer.why === 'away' ? WORDS.noServer : answer.words,
    }
  await askHistory()
  return answer.value
}

/** Fetches past years from the archive, for a club that has no record. */
export const Archive = ({ onOutcome }: { readonly onOutcome: (outcome: BroughtIn) => void }) => {
  const [years, setYears] = useState(30)
  const state = servedForecast.value?.state
  if (state === undefined || state === 'off') return <p class="small quiet">{W.archiveOff}</p>
  return (
    <div class="stack">
      <p class="small quiet">{W.archiveLead}</p>
      <NumberField label={W.archiveYears} unit="" value={years} min={1} max={60} whole onValue={setYears} />
      <button
        type="button"
        class="thin"
        onClick={() => {
          onOutcome('reading')
          void fetchYears(years).then(onOutcome)
        }}
      >
        {W.fetch}
      </button>
    </div>
  )
}
