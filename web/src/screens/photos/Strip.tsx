import { clock, dayWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { greenName, useCourse } from '../../state/course.ts'
import { photosWaiting } from '../../state/photos.ts'
import { photoAlt, photosByDay, type PhotoTold } from './photos-of.ts'
import { PhotoView } from './PhotoView.tsx'
import { Picture } from './Picture.tsx'
import { WORDS } from './words.ts'

/** Photos as a strip by day, the latest first; a press shows one large. */
export const Strip = ({ photos }: { readonly photos: readonly PhotoTold[] }) => {
  const { timeZone } = useCourse()
  const [shown, setShown] = useState<string | null>(null)
  const days = photosByDay(photos, timeZone)
  const waits = new Set(photosWaiting.value.map(({ sha256 }) => sha256))
  if (days.length === 0) return null
  return (
    <>
      <ul class="photo-strip">
        {days.map((day) => (
          <li key={day.date}>
            <span class="small">{dayWords(day.date)}</span>
            <ul>
              {day.photos.map((photo) => (
                <li key={photo.entry}>
                  <button type="button" class="photo-thumb" onClick={() => setShown(photo.entry)}>
                    <Picture
                      sha256={photo.value.sha256}
                      size="thumb"
                      alt={photoAlt(
                        photo,
                        photo.value.green === undefined ? null : greenName(photo.value.green),
                        timeZone,
                      )}
                    />
                  </button>
                  <span class="small quiet" aria-hidden="true">
                    {clock(photo.at, timeZone)}
                    {waits.has(photo.value.sha256) ? `, ${WORDS.waits}` : ''}
                  </span>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      {shown === null ? null : (
        <PhotoView
          photos={days.flatMap((day) => day.photos)}
          shown={shown}
          onShow={setShown}
          onClose={() => setShown(null)}
        />
      )}
    </>
  )
}
