import type { PaperLine } from '../../compute/paper-sheet.ts'
import { greenName } from '../../state/course.ts'
import { WORDS } from './words.ts'

/** One green of the sheet: when it was finished, and a note. */
export const GreenLine = (props: {
  readonly line: PaperLine
  readonly fault: string | null
  /** What was told of the green on that day, in words. */
  readonly told: string
  readonly onLine: (line: PaperLine) => void
}) => {
  const { line, fault, told, onLine } = props
  const name = greenName(line.green)
  return (
    <li class="paper-line">
      <span class="name">
        {name}
        {told === '' ? null : <span class="quiet small"> {told}</span>}
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
