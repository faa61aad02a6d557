import { greensOfMap, type Course, type Green, type MapFeature } from '@swardwright/engine'
import { mapFileErrorSentence } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { FileField } from '../../parts/FileField.tsx'
import { Select } from '../../parts/fields.tsx'
import { Note } from '../../parts/Note.tsx'
import { compute } from '../../state/compute.ts'
import { greenCalled, useCourse } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { fieldsOf, judge, localOf, pairOf, planeOf, type OutlineDraft } from './draft.ts'
import { featureWords } from './FromFile.tsx'
import { WORDS } from './words.ts'

/** A surface is taken for the green whose middle it lies this near to, m; nobody has two greens nearer (our assumption). */
const NEAR_M = 40

const NOBODY = ''

const draftFrom = ({ rings }: MapFeature): OutlineDraft => {
  const [outer = [], ...holes] = rings.map((ring) => ring.map(pairOf))
  return { outer, holes }
}

/** The green that a surface is of: by name, else the one it lies on. */
const likelyGreen = (feature: MapFeature, course: Course): string => {
  const name = feature.name?.toLowerCase()
  const called = course.greens.find(
    (green) => green.name.toLowerCase() === name || greenCalled(green).toLowerCase() === name,
  )
  if (called !== undefined) return called.id
  const judged = judge(draftFrom(feature), feature.name ?? '')
  if (judged.type !== 'sound') return NOBODY
  const [lon, lat] = judged.facts.at
  const near = course.greens
    .map((green) => {
      const [offset] = localOf([[lon, lat]], planeOf(green.at))
      return { id: green.id, offM: offset === undefined ? Infinity : Math.hypot(offset.x, offset.y) }
    })
    .toSorted((a, b) => a.offM - b.offM)[0]
  return near !== undefined && near.offM < NEAR_M ? near.id : NOBODY
}

type Row = { readonly feature: MapFeature; readonly green: string }

type Reading =
  | { readonly type: 'idle' | 'reading' }
  | { readonly type: 'wrong'; readonly sentence: string }
  | { readonly type: 'read'; readonly rows: readonly Row[] }
  | { readonly type: 'kept'; readonly count: number }

/** Why a row can't be kept, or null: the surface will not do, or another row is for the same green. */
const wrongWith = (row: Row, rows: readonly Row[]): string | null => {
  if (row.green === NOBODY) return null
  if (rows.some((other) => other !== row && other.green === row.green)) return WORDS.twice
  const judged = judge(draftFrom(row.feature), row.feature.name ?? '')
  return judged.type === 'wrong' ? judged.sentence : null
}

const keep = async (rows: readonly Row[]): Promise<number> => {
  const changes = rows.flatMap(({ feature, green }) => {
    const draft = draftFrom(feature)
    const judged = judge(draft, feature.name ?? '')
    return green === NOBODY || judged.type !== 'sound'
      ? []
      : [{ part: 'greens' as const, do: 'set' as const, id: green, fields: fieldsOf(draft, judged.facts) }]
  })
  await changeCourse(...changes)
  return changes.length
}

const Rows = (props: {
  readonly rows: readonly Row[]
  readonly greens: readonly Green[]
  readonly onRows: (rows: readonly Row[]) => void
  readonly onKeep: () => void
}) => {
  const { rows, greens, onRows } = props
  const wrong = rows.map((row) => wrongWith(row, rows))
  const options = [
    { value: NOBODY, label: WORDS.leaveOut },
    ...greens.map((green) => ({ value: green.id, label: greenCalled(green) })),
  ]
  return (
    <>
      {rows.map((row, k) => (
        <div key={k}>
          <Select
            label={featureWords(row.feature)}
            value={row.green}
            options={options}
            onValue={(green) => onRows(rows.with(k, { ...row, green }))}
          />
          {wrong[k] == null ? null : <p class="wrong">{wrong[k]}</p>}
        </div>
      ))}
      <button
        type="button"
        class="primary"
        disabled={wrong.some((one) => one !== null) || rows.every((row) => row.green === NOBODY)}
        onClick={props.onKeep}
      >
        {WORDS.keepAll}
      </button>
    </>
  )
}

/** Outlines for greens that are there already, from one map file; nothing else of the course is touched. */
export const OutlinesFromMap = () => {
  const course = useCourse()
  const [reading, setReading] = useState<Reading>({ type: 'idle' })
  const take = async (text: string) => {
    setReading({ type: 'reading' })
    const read = await compute('readMap', text)
    if (!read.ok) return setReading({ type: 'wrong', sentence: mapFileErrorSentence(read.error) })
    const rows = greensOfMap(read.value).map((feature) => ({ feature, green: likelyGreen(feature, course) }))
    setReading(rows.length === 0 ? { type: 'wrong', sentence: WORDS.noGreens } : { type: 'read', rows })
  }
  return (
    <div class="stack">
      <FileField
        label={WORDS.map}
        accept=".geojson,.json,.kml,.osm,.xml"
        hint={WORDS.mapHint}
        onFile={(file) => void file.text().then(take)}
      />
      {reading.type === 'reading' ? <p role="status">{WORDS.reading}</p> : null}
      {reading.type === 'wrong' ? (
        <Note kind="rust" word={WORDS.notRead} live>
          {reading.sentence}.
        </Note>
      ) : null}
      {reading.type === 'read' ? (
        <Rows
          rows={reading.rows}
          greens={course.greens}
          onRows={(rows) => setReading({ type: 'read', rows })}
          onKeep={() => void keep(reading.rows).then((count) => setReading({ type: 'kept', count }))}
        />
      ) : null}
      {reading.type === 'kept' ? (
        <Note kind="leaf" word="Kept." live>
          {WORDS.keptCount(reading.count)}
        </Note>
      ) : null}
    </div>
  )
}
