import { useState } from 'preact/hooks'
import type { Operation } from '@swardwright/engine'
import { PHOTO_PURPOSES } from '@swardwright/journal'
import { Choice } from '../../parts/fields.tsx'
import { Undo } from '../../parts/Undo.tsx'
import { mayRecord } from '../../state/access.ts'
import { facts } from '../../state/journal.ts'
import { lastTouch } from '../../state/undo.ts'
import { Strip } from './Strip.tsx'
import { TakePhoto } from './TakePhoto.tsx'
import { WORDS, type Purpose } from './words.ts'

/** The photos of one green, and the way to take one. */
export const PhotosOfGreen = (props: {
  readonly green: string
  /** The step in hand, which a photo then names. */
  readonly operation?: Operation
  /** True where the page itself has a way back after a touch. */
  readonly hasUndo?: boolean
}) => {
  const { green, operation } = props
  const [purpose, setPurpose] = useState<Purpose>('recovery')
  const photos = facts.value.photos.filter(({ value }) => value.green === green)
  const isTakenOut = lastTouch.value?.words === WORDS.takenOut
  return (
    <div class="stack">
      {isTakenOut && props.hasUndo !== true ? <Undo /> : null}
      {photos.length === 0 ? <p class="quiet small">{WORDS.none}</p> : <Strip photos={photos} />}
      {mayRecord.value ? (
        <Choice
          label={WORDS.of}
          value={purpose}
          options={PHOTO_PURPOSES.map((value) => ({ value, label: WORDS.purposes[value] }))}
          onValue={setPurpose}
        />
      ) : null}
      <TakePhoto of={{ green, purpose, ...(operation === undefined ? {} : { operation }) }} />
    </div>
  )
}
