import { useEffect, useRef, useState } from 'preact/hooks'
import { isCrewPhone, mayRecord } from '../../state/access.ts'
import { author } from '../../state/author.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { photosWaiting } from '../../state/photos.ts'
import { record } from '../../state/record.ts'
import { touch } from '../../state/undo.ts'
import { photoAlt, photoWhen, type PhotoTold } from './photos-of.ts'
import { Picture } from './Picture.tsx'
import { WORDS } from './words.ts'

/** A finger that goes sideways as far as this turns to the next photo. */
const SWIPE_PX = 48

/** Crew take out, and change the note of, what they took themselves. */
const mayChange = (photo: PhotoTold): boolean =>
  mayRecord.value && (!isCrewPhone.value || photo.author === author.value)

/** An entry is never changed: the photo is recorded once more with its note, and the entry before is struck. */
const keepNote = async (
  photo: PhotoTold,
  words: string,
  onChanged: (entry: string) => void,
): Promise<void> => {
  const { words: _before, ...value } = photo.value
  const body = words === '' ? value : { ...value, words }
  // The new entry is shown before the old one goes, so that there is always one to show.
  onChanged(await record('photoTaken', body, Date.parse(photo.at)))
  await record('struck', { entry: photo.entry, reason: 'Its note was changed' })
}

const NoteOf = (props: { readonly photo: PhotoTold; readonly onChanged: (entry: string) => void }) => {
  const { photo } = props
  const before = photo.value.words ?? ''
  const [text, setText] = useState(before)
  useEffect(() => setText(before), [photo.entry])
  if (!mayChange(photo)) return before === '' ? null : <p>{before}</p>
  return (
    <div class="photo-note">
      <label for="photo-note">{WORDS.note}</label>
      <textarea
        id="photo-note"
        rows={2}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
        // The arrows move in the text here, not among the photos.
        onKeyDown={(event) => event.stopPropagation()}
      />
      <button
        type="button"
        disabled={text.trim() === before}
        onClick={() => void keepNote(photo, text.trim(), props.onChanged)}
      >
        {WORDS.keepNote}
      </button>
    </div>
  )
}

/** One photo, large: keys and fingers turn to the ones beside it. `photos` are in order of time, the latest first. */
export const PhotoView = (props: {
  readonly photos: readonly PhotoTold[]
  /** The entry of the photo shown. */
  readonly shown: string
  readonly onShow: (entry: string) => void
  readonly onClose: () => void
}) => {
  const { photos, shown, onShow, onClose } = props
  const { timeZone } = useCourse()
  const dialog = useRef<HTMLDialogElement>(null)
  const startX = useRef<number | null>(null)
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal()
  }, [])
  const at = photos.findIndex(({ entry }) => entry === shown)
  const photo = photos[at]
  const [earlier, newer] = [photos[at + 1], photos[at - 1]]
  const turn = (to: PhotoTold | undefined): void => {
    if (to !== undefined) onShow(to.entry)
  }
  useEffect(() => {
    // Struck on another device while it was looked at.
    if (photo === undefined) dialog.current?.close()
  }, [photo === undefined])
  return (
    <dialog
      ref={dialog}
      class="photo-view"
      aria-label={WORDS.photos}
      onClose={onClose}
      onKeyDown={({ key }) => {
        if (key === 'ArrowLeft') turn(earlier)
        if (key === 'ArrowRight') turn(newer)
      }}
    >
      {photo === undefined ? null : (
        <>
          <div
            class="photo-large"
            onTouchStart={({ touches }) => {
              startX.current = touches.length === 1 ? (touches[0]?.clientX ?? null) : null
            }}
            onTouchEnd={({ changedTouches }) => {
              const [from, to] = [startX.current, changedTouches[0]?.clientX]
              startX.current = null
              if (from === null || to === undefined || Math.abs(to - from) < SWIPE_PX) return
              turn(to > from ? earlier : newer)
            }}
          >
            <Picture
              key={photo.entry}
              sha256={photo.value.sha256}
              size="file"
              alt={photoAlt(
                photo,
                photo.value.green === undefined ? null : greenName(photo.value.green),
                timeZone,
              )}
            />
          </div>
          <div class="photo-told tight">
            <div class="row apart">
              <button type="button" disabled={earlier === undefined} onClick={() => turn(earlier)}>
                {WORDS.earlier}
              </button>
              <button type="button" disabled={newer === undefined} onClick={() => turn(newer)}>
                {WORDS.later}
              </button>
              <button type="button" class="primary" onClick={() => dialog.current?.close()}>
                {WORDS.close}
              </button>
            </div>
            <p role="status">
              <b>{photo.value.green === undefined ? '' : `${greenName(photo.value.green)}, `}</b>
              {WORDS.purposes[photo.value.purpose].toLowerCase()}
              <br />
              {photoWhen(photo, timeZone)}
              {photosWaiting.value.some(({ sha256 }) => sha256 === photo.value.sha256) ? (
                <span class="ochre"> ({WORDS.waits})</span>
              ) : null}
            </p>
            <NoteOf photo={photo} onChanged={onShow} />
            {mayChange(photo) ? (
              <button
                type="button"
                class="plain"
                onClick={() => {
                  const next = newer ?? earlier
                  void touch('struck', { entry: photo.entry, reason: WORDS.takenOut }, WORDS.takenOut)
                  if (next === undefined) dialog.current?.close()
                  else onShow(next.entry)
                }}
              >
                {WORDS.takeOut}
              </button>
            ) : null}
          </div>
        </>
      )}
    </dialog>
  )
}
