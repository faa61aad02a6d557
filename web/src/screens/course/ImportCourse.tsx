import type { CourseReading } from '@swardwright/engine'
import { courseAssumptionSentence, courseErrorSentence } from '@swardwright/present'
import { useId, useState } from 'preact/hooks'
import type { CourseSource } from '../../compute/work.ts'
import { FileField } from '../../parts/FileField.tsx'
import { NumberField } from '../../parts/NumberField.tsx'
import { Note } from '../../parts/Note.tsx'
import { compute } from '../../state/compute.ts'
import { courseId } from '../../state/journal.ts'
import { addCourse } from '../../state/open.ts'
import { changeCourse } from '../../state/record.ts'
import { WORDS } from './words.ts'

type Outcome =
  | { readonly type: 'idle' }
  | { readonly type: 'reading' }
  | { readonly type: 'wrong'; readonly sentence: string }
  | { readonly type: 'done'; readonly reading: CourseReading }

/** Reads a source in the worker and records the course that comes of it. */
const bringIn = async (source: CourseSource): Promise<Outcome> => {
  const read = await compute('readCourse', source)
  if (!read.ok) return { type: 'wrong', sentence: courseErrorSentence(read.error) }
  if (courseId.value === null && (await addCourse(read.value.course.name)) === null)
    return { type: 'wrong', sentence: WORDS.noServer }
  await changeCourse({ part: 'course', do: 'put', value: read.value.course })
  return { type: 'done', reading: read.value }
}

const sentencesOf = ({ course, assumed }: CourseReading): readonly string[] => {
  const names = new Map(course.greens.map((green) => [green.id, green.name]))
  return assumed.flatMap((fact) => courseAssumptionSentence(fact, names) ?? [])
}

const OutcomeNote = ({ outcome }: { readonly outcome: Outcome }) => {
  if (outcome.type === 'idle') return null
  if (outcome.type === 'reading') return <p role="status">{WORDS.reading}</p>
  if (outcome.type === 'wrong')
    return (
      <Note kind="rust" word="Not brought in:" live>
        {outcome.sentence}.
      </Note>
    )
  return (
    <Note kind="leaf" word={WORDS.broughtIn} live>
      {outcome.reading.assumed.length === 0 ? null : WORDS.assumed}
      <ul>
        {sentencesOf(outcome.reading).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Note>
  )
}

const Rough = ({ onSource }: { readonly onSource: (source: CourseSource) => void }) => {
  const [greens, setGreens] = useState<number | null>(19)
  const [totalAreaM2, setTotal] = useState<number | null>(null)
  return (
    <fieldset class="stack">
      <legend>{WORDS.count}</legend>
      <div class="fields">
        <NumberField
          label={WORDS.countGreens}
          unit=""
          value={greens}
          min={1}
          max={54}
          whole
          onValue={setGreens}
        />
        <NumberField
          label={WORDS.countArea}
          unit="m²"
          value={totalAreaM2}
          min={20}
          max={100_000}
          onValue={setTotal}
        />
      </div>
      <p class="small quiet">{WORDS.rough}</p>
      <button
        type="button"
        disabled={greens === null || totalAreaM2 === null}
        onClick={() =>
          greens !== null && totalAreaM2 !== null && onSource({ kind: 'count', greens, totalAreaM2 })
        }
      >
        {WORDS.use}
      </button>
    </fieldset>
  )
}

const List = ({ onSource }: { readonly onSource: (source: CourseSource) => void }) => {
  const id = useId()
  const [text, setText] = useState('')
  return (
    <fieldset class="stack">
      <legend>
        <label for={id}>{WORDS.csv}</label>
      </legend>
      <p class="small quiet">{WORDS.csvHint}</p>
      <textarea id={id} rows={5} value={text} onInput={(event) => setText(event.currentTarget.value)} />
      <button type="button" disabled={text.trim() === ''} onClick={() => onSource({ kind: 'list', text })}>
        {WORDS.use}
      </button>
    </fieldset>
  )
}

/** Three ways to bring a course in, the best first. */
export const ImportCourse = () => {
  const [outcome, setOutcome] = useState<Outcome>({ type: 'idle' })
  const take = (source: CourseSource) => {
    setOutcome({ type: 'reading' })
    void bringIn(source).then(setOutcome)
  }
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.replace}</p>
      <FileField
        label={WORDS.file}
        accept=".geojson,.json,.kml,.osm,.xml,.csv,.txt"
        hint={WORDS.fileHint}
        onFile={(file) => {
          const kind = /\.(csv|txt)$/iu.test(file.name) ? 'list' : 'file'
          void file.text().then((text) => take({ kind, text }))
        }}
      />
      <OutcomeNote outcome={outcome} />
      <List onSource={take} />
      <Rough onSource={take} />
    </div>
  )
}
