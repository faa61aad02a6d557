import { facts } from '../../state/journal.ts'
import { Strip } from './Strip.tsx'
import { TakePhoto } from './TakePhoto.tsx'

/** Enough for the eye to see which way it goes. */
const SHOWN = 4

/** How a green comes back: the latest photos of its surface, and the way to take one. */
export const ComingBack = ({ green }: { readonly green: string }) => {
  const photos = facts.value.photos
    .filter(({ value }) => value.green === green && value.purpose === 'recovery')
    .toSorted((a, b) => Date.parse(b.at) - Date.parse(a.at))
    .slice(0, SHOWN)
  return (
    <div class="tight">
      <Strip photos={photos} />
      <TakePhoto of={{ green, purpose: 'recovery' }} />
    </div>
  )
}
