import { dayAndClock } from '@swardwright/present'
import { saveFile } from '../../parts/save-file.ts'
import { useCourse } from '../../state/course.ts'
import { album, photosRefused, photosWaiting } from '../../state/photos.ts'
import { Picture } from '../photos/Picture.tsx'
import { WAITING_WORDS } from '../photos/words.ts'

const save = async (sha256: string): Promise<void> => {
  const file = await (await album()).fileOf(sha256)
  if (file !== null) saveFile(`photo-${sha256.slice(0, 8)}.jpg`, 'image/jpeg', file)
}

/** Photos that are only on this device, with what stands in their way, and the way to have them in a folder of one’s own. */
export const WaitingPhotos = () => {
  const { timeZone } = useCourse()
  return (
    <div class="waiting-photos">
      <ul class="rows">
        {photosWaiting.value.map(({ sha256, keptMs, refused }) => {
          const when = dayAndClock(new Date(keptMs).toISOString(), timeZone)
          return (
            <li key={sha256}>
              <div class="line">
                <Picture sha256={sha256} size="thumb" alt={`Photo kept ${when}`} />
                <span class="name">{when}</span>
                <button type="button" class="thin rest" onClick={() => void save(sha256)}>
                  {WAITING_WORDS.save}
                </button>
                <span class={refused === null ? 'needs' : 'needs rust'}>
                  {refused ?? WAITING_WORDS.willGo}
                </span>
              </div>
            </li>
          )
        })}
      </ul>
      {photosRefused.value.length === 0 ? null : (
        <button type="button" onClick={() => void album().then((opened) => opened.tryAgain())}>
          {WAITING_WORDS.again}
        </button>
      )}
    </div>
  )
}
