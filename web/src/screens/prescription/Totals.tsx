import {
  bandWords,
  counted,
  decimal,
  figureOf,
  MACHINE_WORDS,
  shareWords,
  unitMark,
} from '@swardwright/present'
import type { GreenFigures } from '../../compute/figures.ts'
import type { CourseTotals, MachineHours } from '../../compute/totals.ts'
import { Fact, Figure } from '../../parts/Figure.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Note } from '../../parts/Note.tsx'
import { Part } from '../../parts/Page.tsx'
import { hoursWords, massWords, sandBand } from '../../parts/quantity-words.ts'
import { units } from '../../state/course.ts'
import { figures, figuresError, figuresPending } from '../../state/figures.ts'
import { planErrorSentence } from '../../state/error-words.ts'
import { GreenByGreen } from './GreenByGreen.tsx'
import { WORDS } from './words.ts'

const SAND_WORDS = { damp: 'damp', kilnDried: 'kiln-dried' } as const

const HoursRow = ({ row, most }: { readonly row: MachineHours; readonly most: number }) => (
  <tr>
    <th scope="row">
      {row.machines > 1
        ? counted(row.machines, MACHINE_WORDS[row.kind].name, MACHINE_WORDS[row.kind].many)
        : MACHINE_WORDS[row.kind].name}
      {row.bottleneck ? <b class="ochre"> {WORDS.bottleneck}</b> : null}
    </th>
    <td class="bar">
      <span style={{ width: `${(100 * row.minutesEach) / most}%` }} class={row.bottleneck ? 'full' : ''} />
    </td>
    <td class="number">{hoursWords(row.minutesEach)}</td>
  </tr>
)

/** Hours that each machine works; the longest is the bottleneck. */
export const MachineHoursTable = ({ rows }: { readonly rows: readonly MachineHours[] }) => {
  const most = Math.max(1, ...rows.map((row) => row.minutesEach))
  return (
    <table class="hours">
      <caption>{WORDS.hoursLead}</caption>
      <thead>
        <tr>
          <th scope="col">Machine</th>
          <td />
          <th scope="col" class="number">
            Hours each
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <HoursRow key={row.kind} row={row} most={most} />
        ))}
      </tbody>
    </table>
  )
}

const TotalFigures = (props: { readonly totals: CourseTotals; readonly greens: readonly GreenFigures[] }) => {
  const { totals, greens } = props
  return (
    <>
      <div class="figures">
        <Figure
          label={WORDS.opened}
          value={decimal(totals.shareSummed * 100, 1)}
          unit="%"
          range={`${shareWords(totals.shareTouched)} ${WORDS.touched}`}
        />
        <Figure
          label={WORDS.out}
          value={massWords(totals.organicKg).figure}
          unit={massWords(totals.organicKg).unit}
          range={
            totals.untested === 0
              ? undefined
              : `${counted(totals.untested, 'green', 'greens')} not tested, left out`
          }
        />
        <Figure
          label={WORDS.sandNeed}
          value={figureOf('sand', totals.sandAll.likelyT, units.value)}
          unit={unitMark('sand', units.value)}
          range={sandBand(totals.sandAll)}
        />
        <Figure label={WORDS.trips} value={String(totals.loads)} />
      </div>
      <dl class="facts">
        <Fact word={WORDS.cores2}>{decimal(totals.coresM3, 1)} m³</Fact>
        {totals.sand.map((row) => (
          <Fact
            key={row.kind}
            word={`Sand, ${SAND_WORDS[row.kind]}`}
            range={`${counted(row.greens, 'green', 'greens')}, ${counted(row.loads, 'load', 'loads')}`}
          >
            {bandWords('sand', { low: row.lowT, likely: row.likelyT, high: row.highT }, units.value)}
          </Fact>
        ))}
      </dl>
      <h3>{WORDS.hours}</h3>
      <MachineHoursTable rows={totals.machineHours} />
      <div>
        <Fold summary={WORDS.byGreen}>{() => <GreenByGreen figures={greens} />}</Fold>
      </div>
    </>
  )
}

/** The whole course in figures that follow every change. */
export const Totals = () => (
  <Part title={WORDS.totals} class="stack">
    {figuresError.value === null ? null : (
      <Note kind="rust" word={WORDS.contradiction} live>
        {planErrorSentence(figuresError.value)}
      </Note>
    )}
    {figures.value === null ? (
      figuresError.value === null && <p role="status">{WORDS.working}</p>
    ) : (
      <div class="stack" aria-busy={figuresPending.value} aria-live="polite">
        <TotalFigures totals={figures.value.totals} greens={figures.value.greens} />
      </div>
    )}
  </Part>
)

/** The same in three figures, at the thumb while one types on a phone. */
export const LiveStrip = () => {
  const totals = figures.value?.totals
  return totals === undefined ? null : (
    <p class="live-strip" aria-hidden="true">
      <span>
        opened <b>{shareWords(totals.shareSummed)}</b>
      </span>
      <span>
        sand{' '}
        <b>
          {figureOf('sand', totals.sandAll.likelyT, units.value)} {unitMark('sand', units.value)}
        </b>
      </span>
      <span>
        <b>{totals.loads}</b> loads
      </span>
    </p>
  )
}
