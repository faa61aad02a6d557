import { useEffect, useState } from 'preact/hooks'
import type { Work } from '../../compute/work.ts'
import { Fold } from '../../parts/Fold.tsx'
import { Note } from '../../parts/Note.tsx'
import { NumberField } from '../../parts/NumberField.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { compute } from '../../state/compute.ts'
import { useCourse } from '../../state/course.ts'
import { latest } from '../../state/latest.ts'
import { askHistory, askWeather, history, serverAway } from '../../state/served-weather.ts'
import { Archive } from './Archive.tsx'
import { ClimateView } from './ClimateView.tsx'
import { HistoryFacts } from './HistoryFacts.tsx'
import { HistoryUpload } from './HistoryUpload.tsx'
import { OutcomeNote, type BroughtIn } from './OutcomeNote.tsx'
import { HISTORY_WORDS as W, WORDS } from './words.ts'
import './weather.css'
import { decides } from '../../state/access.ts'

const climate = latest<Work['climate']['output']>()

/** What the weather of the place has been: the record, and the year by months. */
export const HistoryPage = () => {
  const known = useCourse()
  const [days, setDays] = useState(3)
  const [underMm, setUnder] = useState(1)
  const [outcome, setOutcome] = useState<BroughtIn>(null)
  const record = history.value
  const [longitudeDeg, latitudeDeg] = known.greens[0]?.at ?? [0, 0]
  useEffect(() => {
    void askHistory().then(askWeather)
  }, [])
  useEffect(() => {
    const place = { latitudeDeg, longitudeDeg, altitudeM: known.altitudeM }
    climate.ask(() => compute('climate', { history: record ?? null, place, window: { days, underMm } }))
  }, [record, days, underMm, latitudeDeg, longitudeDeg, known.altitudeM])
  const now = climate.value.value
  return (
    <Page title={W.title} lead={W.lead} over={<a href="/weather">{W.back}</a>}>
      <div class="wide">
        {serverAway.value ? (
          <Note kind="ochre" word={WORDS.away} live>
            {WORDS.awayKept}
          </Note>
        ) : null}
        <Part title={W.climate}>
          <div class="fields">
            <NumberField label={W.window} unit="" value={days} min={1} max={14} whole onValue={setDays} />
            <NumberField label={W.under} unit="mm" value={underMm} min={0.1} max={10} onValue={setUnder} />
          </div>
          {now === null ? <p role="status">{W.reading}</p> : <ClimateView climate={now} days={days} />}
        </Part>
        <Part title={W.record}>
          <div class="stack">
            <OutcomeNote outcome={outcome} />
            {record === undefined || record === null ? <p>{W.none}</p> : <HistoryFacts history={record} />}
          </div>
          {decides.value ? (
            <div>
              <Fold key={String(record === null)} summary={W.bringIn} open={record === null}>
                {() => <HistoryUpload onOutcome={setOutcome} />}
              </Fold>
              <Fold summary={W.archive}>{() => <Archive onOutcome={setOutcome} />}</Fold>
            </div>
          ) : null}
        </Part>
      </div>
    </Page>
  )
}
