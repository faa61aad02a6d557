import { outlineFrom, type MapContent, type MapFeature } from '@swardwright/engine'
import { decimal, mapFileErrorSentence, quantityWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { FileField } from '../../parts/FileField.tsx'
import { Note } from '../../parts/Note.tsx'
import { compute } from '../../state/compute.ts'
import { units } from '../../state/course.ts'
import { localOf, pairOf, planeOf, type OutlineDraft, type Pair } from './draft.ts'
import { endOfWalk } from './walk-track.ts'
import { WORDS } from './words.ts'

type Reading =
  | { readonly type: 'idle' | 'reading' }
  | { readonly type: 'wrong'; readonly sentence: string }
  | { readonly type: 'read'; readonly content: MapContent; readonly closing: string | null }

const KIND_WORDS: Readonly<Record<MapFeature['kind'], string>> = {
  green: 'green',
  tee: 'tee',
  fairway: 'fairway',
  bunker: 'bunker',
  rough: 'rough',
  water: 'water',
  hole: 'hole',
  path: 'path',
  building: 'building',
  other: 'surface',
}

const pairsOf = (ring: MapFeature['rings'][number]): readonly Pair[] => ring.map(pairOf)

/** What a thing in a file is called in the list, with its area where it is one. */
export const featureWords = (feature: MapFeature): string => {
  const name = feature.name ?? WORDS.unnamed
  if (feature.shape === 'line') return `track ${name}`
  const outline = outlineFrom(feature.rings)
  const area = outline.ok ? `, ${quantityWords('area', outline.value.areaM2, units.value)}` : ''
  return `${KIND_WORDS[feature.kind]} ${name}${area}`
}

/** What can be an outline: surfaces, and tracks somebody walked; greens first. */
const usable = ({ features }: MapContent): readonly MapFeature[] =>
  features
    .filter((feature) => feature.shape === 'surface' || (feature.rings[0]?.length ?? 0) >= 8)
    .toSorted((a, b) => Number(b.kind === 'green') - Number(a.kind === 'green'))

/** Taking the outline of one green from a map file. */
export const FromFile = (props: {
  readonly middle: Pair
  readonly onDraft: (draft: OutlineDraft) => void
}) => {
  const [reading, setReading] = useState<Reading>({ type: 'idle' })
  const take = async (text: string) => {
    setReading({ type: 'reading' })
    const read = await compute('readMap', text)
    if (!read.ok) return setReading({ type: 'wrong', sentence: mapFileErrorSentence(read.error) })
    if (usable(read.value).length === 0) return setReading({ type: 'wrong', sentence: WORDS.nothingIn })
    setReading({ type: 'read', content: read.value, closing: null })
  }
  const choose = (feature: MapFeature, content: MapContent) => {
    const [outer = [], ...holes] = feature.rings.map(pairsOf)
    if (feature.shape === 'surface') return props.onDraft({ outer, holes })
    const plane = planeOf(props.middle)
    const end = endOfWalk(localOf(outer, plane))
    if (end.ok) props.onDraft({ outer: end.ring.map((point) => pairOf(plane.toLonLat(point))), holes: [] })
    const closing = end.ok
      ? WORDS.closing(`${decimal(end.closingErrorM, 1)} m`, end.droppedFixes)
      : end.error.type === 'tooFewFixes'
        ? WORDS.walkedError.tooFewFixes(end.error.fixes, end.error.needed)
        : WORDS.walkedError.notClosed(
            `${decimal(end.error.closingErrorM, 0)} m`,
            `${decimal(end.error.maxClosingErrorM, 0)} m`,
          )
    setReading({ type: 'read', content, closing })
  }
  return (
    <div class="stack">
      <FileField
        label={WORDS.choose}
        accept=".geojson,.json,.kml,.gpx,.osm,.xml"
        hint={WORDS.fileLead}
        onFile={(file) => void file.text().then(take)}
      />
      {reading.type === 'reading' ? <p role="status">{WORDS.reading}</p> : null}
      {reading.type === 'wrong' ? (
        <Note kind="rust" word={WORDS.notRead} live>
          {reading.sentence}.
        </Note>
      ) : null}
      {reading.type === 'read' ? (
        <>
          <p>{WORDS.which}</p>
          <div class="row">
            {usable(reading.content).map((feature, k) => (
              <button key={k} type="button" class="thin" onClick={() => choose(feature, reading.content)}>
                {featureWords(feature)}
              </button>
            ))}
          </div>
          {reading.content.skipped.length === 0 ? null : (
            <p class="small ochre">{WORDS.skipped(reading.content.skipped.length)}</p>
          )}
          {reading.closing === null ? null : <p role="status">{reading.closing}</p>}
        </>
      ) : null}
    </div>
  )
}
