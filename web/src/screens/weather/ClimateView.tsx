import type { ClimateMonth } from '@swardwright/engine'
import {
  climateDrawing,
  decimal,
  fixedDecimal,
  inWantedUnit,
  monthName,
  unitMark,
  wantedDecimals,
} from '@swardwright/present'
import type { Climate } from '../../compute/climate.ts'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Note } from '../../parts/Note.tsx'
import { isWide } from '../../shell/wide.ts'
import { units } from '../../state/course.ts'
import { HISTORY_WORDS as W } from './words.ts'

/** A figure of a month, or a dash where the record has no whole month of it. */
const orDash = (value: number | null, words: (value: number) => string): string =>
  value === null || !Number.isFinite(value) ? '–' : words(value)

const row = (month: ClimateMonth): readonly string[] => {
  const wanted = units.value
  // Columns of figures stand under each other, so each has all its decimals.
  const column = (kind: 'rain' | 'temperature') => (stored: number) =>
    fixedDecimal(inWantedUnit(kind, stored, wanted), wantedDecimals(kind, wanted))
  const [rain, temperature] = [column('rain'), column('temperature')]
  return [
    `${orDash(month.rainMm.mean, rain)} ± ${orDash(month.rainMm.betweenYears, rain)}`,
    `${orDash(month.wetDays.mean, (days) => fixedDecimal(days, 1))} ± ${orDash(month.wetDays.betweenYears, (days) => fixedDecimal(days, 1))}`,
    orDash(month.minC, temperature),
    orDash(month.maxC, temperature),
    orDash(month.growth, (share) => decimal(share * 100, 0)),
    orDash(month.etMmPerDay, (mm) => fixedDecimal(mm, 1)),
    orDash(month.dryWindow, (share) => decimal(share * 100, 0)),
  ]
}

const Table = ({ months }: { readonly months: readonly ClimateMonth[] }) => {
  const { columns } = W
  const wanted = units.value
  const heads = [
    `${columns.rain} ${unitMark('rain', wanted)}`,
    columns.wetDays,
    `${columns.min} ${unitMark('temperature', wanted)}`,
    `${columns.max} ${unitMark('temperature', wanted)}`,
    columns.growth,
    columns.et,
    columns.window,
  ]
  return (
    <div class="scroll-x" role="region" aria-label={W.table} tabIndex={0}>
      <table class="climate-table">
        <caption>Mean of the years, ± from year to year</caption>
        <thead>
          <tr>
            <th scope="col">{columns.month}</th>
            {heads.map((head) => (
              <th key={head} scope="col" class="number">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {months.map((month) => (
            <tr key={month.month}>
              <th scope="row">{monthName(month.month)}</th>
              {row(month).map((cell, at) => (
                <td key={heads[at]} class="number">
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** The year by months, drawn and in figures, and what it stands on. */
export const ClimateView = ({ climate, days }: { readonly climate: Climate; readonly days: number }) => (
  <div class="stack">
    {climate.generated ? (
      <Note kind="ochre" word={W.generated}>
        {W.generatedLead}
      </Note>
    ) : null}
    <DrawingView
      drawing={climateDrawing({
        months: climate.months.map((month) => ({ ...month, rainMm: month.rainMm.mean })),
        windowWords: W.windowRow(days),
        units: units.value,
        widthPx: isWide.value ? 860 : 358,
        scope: 'climate',
      })}
    />
    <Fold summary={`${W.table}, ${W.years(Math.round(climate.years))}`} open={isWide.value}>
      {() => <Table months={climate.months} />}
    </Fold>
    <Fold summary={W.how}>
      {() => (
        <ul class="tight small">
          {W.howLines.map((line) => (
            <li key={line}>{line}</li>
          ))}
          {climate.generated ? <li>{W.credit}</li> : null}
        </ul>
      )}
    </Fold>
  </div>
)
