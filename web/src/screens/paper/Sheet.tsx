import { useState } from 'preact/hooks'
import type { Plan } from '@swardwright/engine'
import { clock, counted, dateAt, taskTodo } from '@swardwright/present'
import { momentOf, paperEntries, timeFault, type PaperEntry } from '../../compute/paper-sheet.ts'
import {
  NO_STOP,
  stepsOn,
  stopEntries,
  stopFault,
  withoutBlankEnd,
  type StopEntry,
} from '../../compute/paper-stops.ts'
import { Undo } from '../../parts/Undo.tsx'
import { nowMs } from '../../state/clock.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { dayAsk, finishedToday } from '../../state/day.ts'
import { record } from '../../state/record.ts'
import { dropWritten, putBackSheet, typedSheet, typeSheet, type TypedSheet } from '../../state/typed-sheet.ts'
import { lastTouch } from '../../state/undo.ts'
import { GreenLine } from './GreenLine.tsx'
import { StopLine } from './StopLine.tsx'
import { FAULTS, WORDS } from './words.ts'

/** A held clock may run ahead of the true one; entries never do. */
const notAhead = (atMs: number): number => Math.min(atMs, Date.now())

const recordGreen = async ({ green, finishedMs, note }: PaperEntry): Promise<readonly string[]> => {
  const entries: string[] = []
  if (finishedMs !== null) entries.push(await record('greenFinished', { green }, notAhead(finishedMs)))
  if (note !== null)
    entries.push(
      await record(
        'noteWritten',
        { words: note.words, about: { what: 'green', id: green } },
        notAhead(note.atMs),
      ),
    )
  return entries
}

const recordStop = ({ body, atMs }: StopEntry): Promise<string> => record('taskStopped', body, notAhead(atMs))

/** What was told of a green on that day, in words; empty where nothing was. */
const toldOf = (green: string, date: string, timeZone: string): string => {
  const finished = finishedToday.value.get(green)
  const stopped = (dayAsk.value?.facts ?? []).flatMap((fact) => {
    if (fact.kind !== 'stopped' || fact.green !== green || fact.operation === undefined) return []
    if (dateAt(fact.at, timeZone) !== date) return []
    const { operation, pass = null, load = null } = fact
    return [`${WORDS.isBrokenOff} ${clock(fact.at, timeZone)}: ${taskTodo({ operation, pass, load })}`]
  })
  const done = finished === undefined ? [] : [`${WORDS.isFinished} ${clock(finished.atMs, timeZone)}`]
  return [...stopped, ...done].join('; ')
}

/** The sheet of one day: its greens, and the steps broken off. One press writes it down, another takes it back into the fields. */
export const Sheet = (props: {
  readonly plan: Plan
  readonly date: string
  readonly onTyping: () => void
}) => {
  const { plan, date } = props
  const { timeZone } = useCourse()
  const [isKeeping, setKeeping] = useState(false)
  const sheet = typedSheet(date)
  const onDay = { date, timeZone, nowMs: nowMs.value }
  const lines = plan.openings
    .filter(({ opened }) => dateAt(opened, timeZone) === date)
    .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))
    .map(({ green }) => sheet.lines[green] ?? { green, time: '', note: '' })
  const known = {
    ...onDay,
    steps: stepsOn(plan, date, timeZone),
    finishedMs: (green: string): number | null =>
      momentOf(sheet.lines[green]?.time ?? '', onDay) ?? finishedToday.value.get(green)?.atMs ?? null,
  }
  const steps = known.steps.map(({ key, covering, task }) => ({
    key,
    name: `${greenName(covering.green)}: ${taskTodo(task)}`,
  }))
  const greens = paperEntries(lines, onDay)
  const stops = stopEntries(sheet.stops, known)
  const isFaulty =
    lines.some(({ time }) => timeFault(time, onDay) !== null) ||
    sheet.stops.some((stop) => stopFault(stop, known) !== null)

  const type = (changed: TypedSheet): void => {
    props.onTyping()
    typeSheet(date, changed)
  }
  const keep = async (): Promise<void> => {
    const written = { lines: Object.fromEntries(lines.map((line) => [line.green, line])), stops: sheet.stops }
    setKeeping(true)
    try {
      const entries: string[] = []
      for (const green of greens) entries.push(...(await recordGreen(green)))
      for (const stop of stops) entries.push(await recordStop(stop))
      dropWritten(date, written)
      lastTouch.value = {
        entries,
        words: `${counted(greens.length + stops.length, 'line', 'lines')} ${WORDS.written}`,
        giveBack: () => putBackSheet(date, written),
      }
    } finally {
      setKeeping(false)
    }
  }
  return (
    <div class="stack">
      <ul>
        {lines.map((line) => {
          const fault = timeFault(line.time, onDay)
          return (
            <GreenLine
              key={line.green}
              line={line}
              fault={fault === null ? null : FAULTS[fault]}
              told={toldOf(line.green, date, timeZone)}
              onLine={(changed) => type({ ...sheet, lines: { ...sheet.lines, [line.green]: changed } })}
            />
          )
        })}
      </ul>
      <section class="tight" aria-labelledby="broken-off">
        <h2 id="broken-off">{WORDS.brokenOff}</h2>
        <ul>
          {[...sheet.stops, NO_STOP].map((stop, n) => (
            <StopLine
              key={n}
              stop={stop}
              steps={steps}
              fault={stopFault(stop, known)}
              onStop={(changed) =>
                type({ ...sheet, stops: withoutBlankEnd([...sheet.stops, NO_STOP].with(n, changed)) })
              }
            />
          ))}
        </ul>
      </section>
      <Undo />
      <button
        type="button"
        class="primary whole"
        disabled={isKeeping || isFaulty || greens.length + stops.length === 0}
        onClick={() => void keep()}
      >
        {WORDS.keep}
      </button>
    </div>
  )
}
