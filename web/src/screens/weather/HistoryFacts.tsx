import type { KeptHistory } from '@swardwright/journal'
import { counted, dateRange, decimal, gapWords } from '@swardwright/present'
import { Fold } from '../../parts/Fold.tsx'
import { HISTORY_WORDS as W } from './words.ts'

/** Gaps that are listed one by one. */
const LISTED = 60

/** What the record is: where from, how long, what is missing and what was not taken. */
export const HistoryFacts = ({ history }: { readonly history: KeptHistory }) => {
  const { station, gaps, refused, refusedCount } = history
  return (
    <div class="stack">
      <p class="upshot">
        <b>{dateRange(history.from, history.to)}</b>, {counted(history.rows, 'day', 'days')}
      </p>
      <p>
        {history.source === 'archive'
          ? `From the archive of ${history.name}`
          : `From the file ${history.name}`}
        . {W.station}: {decimal(station.latitudeDeg, 3)}, {decimal(station.longitudeDeg, 3)},{' '}
        {decimal(station.altitudeM, 0)} m. {history.stationAssumed ? W.stationAssumed : ''}
      </p>
      {gaps.length === 0 ? (
        <p>{W.noGaps}</p>
      ) : (
        <Fold summary={W.gaps(gaps.length)}>
          {() => (
            <ul class="tight small">
              {gaps.slice(0, LISTED).map((gap) => (
                <li key={`${gap.column} ${gap.from}`}>{gapWords(gap)}</li>
              ))}
              {gaps.length > LISTED ? <li>{W.moreRefused(gaps.length - LISTED)}</li> : null}
            </ul>
          )}
        </Fold>
      )}
      {refusedCount === 0 ? null : (
        <Fold summary={W.refused(refusedCount)} open>
          {() => (
            <ul class="tight small">
              {refused.map(({ row, why }) => (
                <li key={`${row} ${why}`}>
                  <b>Row {row}:</b> {why}
                </li>
              ))}
              {refusedCount > refused.length ? <li>{W.moreRefused(refusedCount - refused.length)}</li> : null}
            </ul>
          )}
        </Fold>
      )}
    </div>
  )
}
