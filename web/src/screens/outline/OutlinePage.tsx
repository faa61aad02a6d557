import type { Course, Green } from '@swardwright/engine'
import { outlineDrawing, quantityWords } from '@swardwright/present'
import { useRoute } from 'preact-iso'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Figure } from '../../parts/Figure.tsx'
import { Note } from '../../parts/Note.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { isWide } from '../../shell/wide.ts'
import { greenCalled, units, useCourse } from '../../state/course.ts'
import { setGreen } from '../green/GreenFacts.tsx'
import { LostGreen } from '../green/LostGreen.tsx'
import { Corners } from './Corners.tsx'
import {
  draftOf,
  ellipseDraft,
  fieldsOf,
  judge,
  localOf,
  planeOf,
  type Judged,
  type OutlineDraft,
  type Pair,
} from './draft.ts'
import { DrawOnMap } from './DrawOnMap.tsx'
import { FromFile } from './FromFile.tsx'
import { WalkIt } from './WalkIt.tsx'
import { WORDS } from './words.ts'
import { decides } from '../../state/access.ts'

const WIDTH_PX = { wide: 560, narrow: 358 } as const

/** Greens and bunkers further off than this are left out of the picture, m. */
const BESIDE_M = 200

const outersOf = (course: Course, green: Green) => {
  const plane = planeOf(green.at)
  const near = (at: Pair) => localOf([at], plane).some(({ x, y }) => Math.hypot(x, y) < BESIDE_M)
  const greens = course.greens.flatMap((other) => {
    const [outer] = other.id !== green.id && near(other.at) ? (other.outline ?? []) : []
    return outer === undefined ? [] : [{ name: greenCalled(other), outer }]
  })
  const bunkers = course.places.flatMap(({ kind, at, outline }) => {
    const [outer] = kind === 'bunker' && near(at) ? (outline ?? []) : []
    return outer === undefined ? [] : [outer]
  })
  return { greens, bunkers }
}

const Preview = (props: {
  readonly course: Course
  readonly green: Green
  readonly draft: OutlineDraft
  readonly walked: readonly Pair[]
  readonly judged: Judged
}) => {
  const { course, green, draft, walked, judged } = props
  const widthPx = isWide.value ? WIDTH_PX.wide : WIDTH_PX.narrow
  const drawing = useMemo(() => {
    const plane = planeOf(green.at)
    const { greens, bunkers } = outersOf(course, green)
    const faultAt = judged.type === 'wrong' && judged.at !== null ? localOf([judged.at], plane)[0] : undefined
    return outlineDrawing({
      label: WORDS.picture(greenCalled(green)),
      rings: [draft.outer, ...draft.holes].map((ring) => localOf(ring, plane)),
      beside: greens.map(({ name, outer }) => ({ name, ring: localOf(outer, plane) })),
      bunkers: bunkers.map((ring) => localOf(ring, plane)),
      walked: localOf(walked, plane),
      faultAt,
      numbered: true,
      widthPx,
    })
  }, [course, green, draft, walked, judged, widthPx])
  return <DrawingView drawing={drawing} />
}

const Verdict = (props: { readonly green: Green; readonly judged: Judged; readonly isChanged: boolean }) => {
  const { green, judged } = props
  if (judged.type === 'empty') return <p>{WORDS.none}</p>
  if (judged.type === 'wrong')
    return (
      <Note kind="rust" word={WORDS.refused} live>
        {judged.sentence} {judged.at === null ? '' : WORDS.here}
      </Note>
    )
  const [figure = '', unit = ''] = quantityWords('area', judged.facts.areaM2, units.value).split(/\s/u)
  return (
    <div role="status">
      <Figure
        label={WORDS.area}
        value={figure}
        unit={unit}
        {...(props.isChanged ? { range: WORDS.now(quantityWords('area', green.areaM2, units.value)) } : {})}
      />
    </div>
  )
}

const Outline = ({ course, green }: { readonly course: Course; readonly green: Green }) => {
  const [draft, setDraft] = useState(() => draftOf(green))
  const [walked, setWalked] = useState<readonly Pair[]>([])
  const [isKept, setKept] = useState(false)
  const kept = useMemo(() => draftOf(green), [green])
  const judged = useMemo(() => judge(draft, green.name), [draft, green.name])
  const isChanged = JSON.stringify(draft) !== JSON.stringify(kept)
  const change = (next: OutlineDraft) => {
    setKept(false)
    setDraft(next)
  }
  const onOuter = (outer: readonly Pair[]) => change({ ...draft, outer })
  // A walk or a file is a whole new edge: islands of the old one need not lie in it.
  const onNewOuter = (outer: readonly Pair[]) => change({ outer, holes: [] })
  useEffect(() => {
    if (!isChanged) return undefined
    const warn = (event: BeforeUnloadEvent) => event.preventDefault()
    addEventListener('beforeunload', warn)
    return () => removeEventListener('beforeunload', warn)
  }, [isChanged])
  const { greens, bunkers } = useMemo(() => outersOf(course, green), [course, green])
  const save = () => {
    if (judged.type !== 'sound') return
    void setGreen(green, fieldsOf(draft, judged.facts)).then(() => setKept(true))
  }
  return (
    <div class="columns main-left">
      <div class="stack beside">
        <Preview course={course} green={green} draft={draft} walked={walked} judged={judged} />
        <Verdict green={green} judged={judged} isChanged={isChanged} />
        {draft.holes.length === 0 ? null : (
          <p class="small">
            {WORDS.islands(draft.holes.length)}{' '}
            <button type="button" class="thin" onClick={() => change({ ...draft, holes: [] })}>
              {WORDS.removeIslands}
            </button>
          </p>
        )}
        <div class="row">
          <button
            type="button"
            class="primary"
            disabled={judged.type !== 'sound' || !isChanged}
            onClick={save}
          >
            {WORDS.save}
          </button>
          {isChanged ? (
            <button type="button" onClick={() => change(kept)}>
              {WORDS.undo}
            </button>
          ) : null}
          {draft.outer.length === 0 ? (
            <button type="button" onClick={() => change(ellipseDraft(green))}>
              {WORDS.ellipse}
            </button>
          ) : null}
        </div>
        {isKept && !isChanged ? (
          <Note kind="leaf" word="Kept." live>
            {WORDS.saved}
          </Note>
        ) : null}
      </div>
      <div class="wide">
        <Part title={WORDS.draw}>
          <DrawOnMap
            outer={draft.outer}
            middle={green.at}
            beside={[...greens.map(({ outer }) => outer), ...bunkers]}
            onOuter={onOuter}
          />
        </Part>
        <Part title={WORDS.walk}>
          <WalkIt middle={green.at} onWalked={setWalked} onOuter={onNewOuter} />
        </Part>
        <Part title={WORDS.file}>
          <FromFile middle={green.at} onDraft={change} />
        </Part>
        <div>
          <Fold summary={WORDS.corners}>
            {() => <Corners outer={draft.outer} middle={green.at} onOuter={onOuter} />}
          </Fold>
        </div>
      </div>
    </div>
  )
}

/** Where the outline of a green comes in: drawn, walked, or from a file, and put right corner by corner. */
export const OutlinePage = () => {
  const { params } = useRoute()
  const course = useCourse()
  const green = course.greens.find((one) => one.id === params['id'])
  if (green === undefined) return <LostGreen />
  return (
    <Page
      title={WORDS.title(greenCalled(green))}
      over={
        <>
          <a href={`/green/${encodeURIComponent(green.id)}`}>{WORDS.back}</a> ·{' '}
          {quantityWords('area', green.areaM2, units.value)}
        </>
      }
      lead={WORDS.lead}
    >
      {decides.value ? <Outline key={green.id} course={course} green={green} /> : null}
    </Page>
  )
}
