import { useState } from 'preact/hooks'
import type { Plan } from '@swardwright/engine'
import { clock, counted, dateAt, dayHeading, dayWords } from '@swardwright/present'
import { paperEntries, timeFault, type PaperLine } from '../../compute/paper-sheet.ts'
import { workDays } from '../../compute/moment.ts'
import { Page } from '../../parts/Page.tsx'
import { Select } from '../../parts/fields.tsx'
import { nowMs } from '../../state/clock.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { finishedToday } from '../../state/day.ts'
import { shownPlan } from '../../state/plan.ts'
import { record } from '../../state/record.ts'
import { WORDS } from './words.ts'
import { mayRecord } from '../../state/access.ts'

const FAULTS = { noClock: WORDS.noClock, afterNow: WORDS.afterNow } as const

/** A held clock may run ahead of the true one; entries never do. */
const notAhead = (atMs: number): number => Math.min(atMs, Date.now())

const Line = (props: {
  readonly line: PaperLine
  readonly fault: string | null
  readonly done: string | null
  readonly onLine: (line: PaperLine) => void
}) => {
  const { line, fault, done, onLine } = props
  const name = greenName(line.green)
  return (
    <li class="paper-line">
      <span class="name">
        {name}
        {done === null ? null : <span class="quiet small"> {done}</span>}
      </span>
      <input
        type="text"
        inputMode="text"
        placeholder="HH:MM"
        autoComplete="off"
        aria-label={`${name}, ${WORDS.finished}`}
        aria-invalid={fault !== null}
        value={line.time}
        onInput={(event) => onLine({ ...line, time: event.currentTarget.value })}
      />
      <input
        type="text"
        placeholder={WORDS.note}
        autoComplete="off"
        aria-label={`${name}, ${WORDS.note}`}
        value={line.note}
        onInput={(event) => onLine({ ...line, note: event.currentTarget.value })}
      />
      {fault === null ? null : <p class="wrong">{fault}</p>}
    </li>
  )
}

const Sheet = (props: { readonly plan: Plan; readonly date: string; readonly onTyping: () => void }) => {
  const { plan, date } = props
  const { timeZone } = useCourse()
  const known = { date, timeZone, nowMs: nowMs.value }
  const greens = plan.openings
    .filter(({ opened }) => dateAt(opened, timeZone) === date)
    .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))
    .map(({ green }) => green)
  const [typed, setTyped] = useState<Readonly<Record<string, PaperLine>>>({})
  const [kept, setKept] = useState<number | null>(null)
  const lines = greens.map((green) => typed[green] ?? { green, time: '', note: '' })
  const entries = paperEntries(lines, known)
  const isFaulty = lines.some(({ time }) => timeFault(time, known) !== null)
  const keep = async (): Promise<void> => {
    for (const { green, finishedMs, note } of entries) {
      if (finishedMs !== null) await record('greenFinished', { green }, notAhead(finishedMs))
      if (note !== null)
        await record(
          'noteWritten',
          { words: note.words, about: { what: 'green', id: green } },
          notAhead(note.atMs),
        )
    }
    setTyped({})
    setKept(entries.length)
  }
  return (
    <div class="stack">
      <ul>
        {lines.map((line) => {
          const fault = timeFault(line.time, known)
          const done = finishedToday.value.get(line.green)
          return (
            <Line
              key={line.green}
              line={line}
              fault={fault === null ? null : FAULTS[fault]}
              done={done === undefined ? null : `${WORDS.isFinished} ${clock(done.atMs, timeZone)}`}
              onLine={(changed) => {
                props.onTyping()
                setKept(null)
                setTyped({ ...typed, [line.green]: changed })
              }}
            />
          )
        })}
      </ul>
      <p role="status">{kept === null ? '' : `${counted(kept, 'line', 'lines')} ${WORDS.kept}`}</p>
      <button
        type="button"
        class="primary whole"
        disabled={entries.length === 0 || isFaulty}
        onClick={() => void keep()}
      >
        {WORDS.keep}
      </button>
    </div>
  )
}

/** A paper sheet typed in later: the greens of one day, when each was finished, and a note where there is one. */
export const PaperPage = () => {
  const { timeZone } = useCourse()
  const plan = shownPlan.value
  const days = plan === null ? [] : workDays(plan, timeZone).filter(({ startMs }) => startMs <= nowMs.value)
  const [chosen, setDate] = useState<string | null>(null)
  const date = chosen ?? days.at(-1)?.date
  return (
    <Page title={WORDS.title} over={date === undefined ? undefined : dayHeading(date)} lead={WORDS.lead}>
      {!mayRecord.value ? null : plan === null || date === undefined ? (
        <p>{WORDS.nothing}</p>
      ) : (
        <div class="stack">
          {days.length < 2 ? null : (
            <Select
              label={WORDS.day}
              value={date}
              options={days.map((one) => ({ value: one.date, label: dayWords(one.date) }))}
              onValue={setDate}
            />
          )}
          {/* The day stays while it is typed in, also when another one begins meanwhile. */}
          <Sheet key={date} plan={plan} date={date} onTyping={() => setDate(date)} />
        </div>
      )}
    </Page>
  )
}
