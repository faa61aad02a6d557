import '../../style/photos.css'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Looked } from '../../photos/album.ts'
import type { PhotoSize } from '../../photos/photo-store.ts'
import { link } from '../../state/journal.ts'
import { album } from '../../state/photos.ts'
import { WORDS } from './words.ts'

type Shown = { readonly url: string } | { readonly words: string }

const LOOK_AGAIN_MS = 10_000

const AWAY: Looked = { got: 'away' }

const wordsOf = ({ got }: Exclude<Looked, { readonly got: 'photo' }>): string =>
  got === 'notYet' ? WORDS.notYet : WORDS.notHere

/** True once the place of a picture has come near the part of the page that is seen. */
const useSeen = (): { readonly place: { current: HTMLSpanElement | null }; readonly isSeen: boolean } => {
  const place = useRef<HTMLSpanElement>(null)
  const [isSeen, setSeen] = useState(false)
  useEffect(() => {
    if (isSeen || place.current === null) return
    const watch = new IntersectionObserver(
      (seen) => {
        if (seen.some(({ isIntersecting }) => isIntersecting)) setSeen(true)
      },
      { rootMargin: '200px' },
    )
    watch.observe(place.current)
    return () => watch.disconnect()
  }, [isSeen])
  return { place, isSeen }
}

/**
 * A photo or its thumbnail: got from this device, else from the server, once it is to be seen. Says so where there is none. Another photo
 * needs another `key`.
 */
export const Picture = (props: {
  readonly sha256: string
  readonly size: PhotoSize
  readonly alt: string
}) => {
  const { sha256, size, alt } = props
  const { place, isSeen } = useSeen()
  const [shown, setShown] = useState<Shown>({ words: WORDS.loading })
  const [tries, setTries] = useState(0)
  const isLevel = link.value === 'level'
  const hasIt = 'url' in shown
  useEffect(() => {
    if (!isSeen || hasIt) return
    let isGone = false
    let again: ReturnType<typeof setTimeout> | undefined
    const look = async (): Promise<void> => {
      const looked = await album()
        .then((opened) => opened.look(sha256, size))
        .catch(() => AWAY)
      if (isGone) return
      if (looked.got === 'photo') {
        setShown({ url: URL.createObjectURL(new Blob([looked.bytes], { type: 'image/jpeg' })) })
        return
      }
      setShown({ words: wordsOf(looked) })
      // Nobody tells when the phone that took it has sent it.
      again = setTimeout(() => setTries((count) => count + 1), LOOK_AGAIN_MS)
    }
    void look()
    return () => {
      isGone = true
      clearTimeout(again)
    }
  }, [isSeen, isLevel, hasIt, tries])
  useEffect(() => {
    return 'url' in shown ? () => URL.revokeObjectURL(shown.url) : undefined
  }, [shown])
  return (
    <span class="picture" ref={place}>
      {'url' in shown ? (
        <img src={shown.url} alt={alt} />
      ) : (
        <span class="no-picture small" role="img" aria-label={`${alt} (${shown.words})`}>
          {shown.words}
        </span>
      )}
    </span>
  )
}
