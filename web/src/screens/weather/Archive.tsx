import type { HistoryOutcome } from '@swardwright/journal'
import { useState } from 'preact/hooks'
import { archiveYears } from '../../compute/sky-day.ts'
import { NumberField } from '../../parts/NumberField.tsx'
import { callServer } from '../../journal/server.ts'
import { today } from '../../state/clock.ts'
import { servedForecast } from '../../state/served-weather.ts'
import { broughtIn } from './brought-in.ts'
import type { BroughtIn } from './OutcomeNote.tsx'
import { HISTORY_WORDS as W } from './words.ts'

const fetchYears = (years: number): Promise<HistoryOutcome> =>
  broughtIn((course) =>
    callServer('fetchHistory', { params: { course }, body: archiveYears(today.value, years) }),
  )

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
