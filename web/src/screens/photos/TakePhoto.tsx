import { counted } from '@swardwright/present'
import { useRef, useState } from 'preact/hooks'
import { Note } from '../../parts/Note.tsx'
import { saveFile } from '../../parts/save-file.ts'
import type { PhotoOf } from '../../photos/album.ts'
import { makeReady, type ReadyPhoto } from '../../photos/make-ready.ts'
import { HEAD_BYTES, takenAt } from '../../photos/taken-at.ts'
import { mayRecord } from '../../state/access.ts'
import { facts } from '../../state/journal.ts'
import { album } from '../../state/photos.ts'
import { WORDS } from './words.ts'

/** A photo that found no room: it is only in this page. */
type Homeless = { readonly ready: ReadyPhoto; readonly of: PhotoOf; readonly atMs: number }

type Taken = { readonly words: string | null; readonly homeless: readonly Homeless[] }

const NOTHING: Taken = { words: null, homeless: [] }

const isHere = (ready: ReadyPhoto, of: PhotoOf): boolean =>
  facts.value.photos.some(
    ({ value }) => value.sha256 === ready.sha256 && value.green === of.green && value.about === of.about,
  )

/** Keeps one picture; tells what is wrong where it can’t. */
const keepOne = async (picked: File, of: PhotoOf, atMs: number): Promise<Taken> => {
  const ready = await makeReady(picked)
  if (ready === null) return { words: WORDS.unreadable, homeless: [] }
  if (isHere(ready, of)) return { words: WORDS.same, homeless: [] }
  return (await (await album()).keep(ready, of, atMs))
    ? NOTHING
    : { words: null, homeless: [{ ready, of, atMs }] }
}

/** When a picture from the gallery was taken: as its camera wrote it, else when its file was written; never after now. */
const momentOf = async (picked: File): Promise<number> => {
  const told = takenAt(new Uint8Array(await picked.slice(0, HEAD_BYTES).arrayBuffer()))
  const ms = told === null ? picked.lastModified : Date.parse(told)
  return ms > 0 ? Math.min(ms, Date.now()) : Date.now()
}

const NoRoom = (props: { readonly homeless: readonly Homeless[]; readonly onAgain: () => void }) => (
  <Note kind="rust" word={WORDS.fullWord} live>
    {WORDS.full}
    <div class="row">
      <button type="button" onClick={props.onAgain}>
        {WORDS.again}
      </button>
      {props.homeless.map(({ ready }) => (
        <button
          key={ready.sha256}
          type="button"
          onClick={() => saveFile(`photo-${ready.sha256.slice(0, 8)}.jpg`, 'image/jpeg', ready.file)}
        >
          {WORDS.save}
        </button>
      ))}
    </div>
  </Note>
)

/** A button that hands on pictures: from the camera at once, or several from the gallery. */
const Pick = (props: {
  readonly label: string
  readonly class?: string
  readonly camera: boolean
  readonly onFiles: (files: readonly File[]) => void
}) => {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" class={props.class} onClick={() => input.current?.click()}>
        {props.label}
      </button>
      <input
        ref={input}
        type="file"
        accept="image/*"
        hidden
        {...(props.camera ? { capture: 'environment' as const } : { multiple: true })}
        aria-label={props.label}
        onChange={({ currentTarget }) => {
          const files = [...(currentTarget.files ?? [])]
          // The same picture may be chosen again.
          currentTarget.value = ''
          if (files.length > 0) props.onFiles(files)
        }}
      />
    </>
  )
}

/** A desk has no camera that looks at a green. */
const hasTouch = (): boolean => matchMedia('(pointer: coarse)').matches

/** Takes photos, or adds them from the gallery; each is kept on this device before its entry is written. */
export const TakePhoto = (props: { readonly of: PhotoOf; readonly takeLabel?: string }) => {
  const [left, setLeft] = useState(0)
  const [kept, setKept] = useState(0)
  const [taken, setTaken] = useState(NOTHING)
  const keepAll = async (tasks: readonly (() => Promise<Taken>)[]): Promise<void> => {
    let told = NOTHING
    setTaken(told)
    setKept(0)
    setLeft((count) => count + tasks.length)
    for (const task of tasks) {
      const one = await task().catch((): Taken => ({ words: WORDS.failed, homeless: [] }))
      if (one.words === null && one.homeless.length === 0) setKept((count) => count + 1)
      told = { words: one.words ?? told.words, homeless: [...told.homeless, ...one.homeless] }
      setLeft((count) => count - 1)
    }
    setTaken(told)
  }
  const onFiles = (momentBy: (file: File) => Promise<number>) => (files: readonly File[]) =>
    void keepAll(files.map((file) => async () => keepOne(file, props.of, await momentBy(file))))
  const again = (): void =>
    void keepAll(
      taken.homeless.map(({ ready, of, atMs }) => async () => {
        const isKept = await (await album()).keep(ready, of, atMs)
        return { words: null, homeless: isKept ? [] : [{ ready, of, atMs }] }
      }),
    )
  if (!mayRecord.value) return null
  return (
    <div class="tight">
      <div class="row">
        {hasTouch() ? (
          <>
            <Pick label={props.takeLabel ?? WORDS.take} camera onFiles={onFiles(async () => Date.now())} />
            <Pick label={WORDS.pickShort} camera={false} onFiles={onFiles(momentOf)} />
          </>
        ) : (
          <Pick label={props.takeLabel ?? WORDS.pick} camera={false} onFiles={onFiles(momentOf)} />
        )}
      </div>
      <p role="status" class={taken.words === null ? 'small' : 'wrong'}>
        {left > 0
          ? WORDS.making
          : (taken.words ?? (kept === 0 ? '' : `${counted(kept, 'photo', 'photos')} ${WORDS.kept}`))}
      </p>
      {taken.homeless.length === 0 ? null : <NoRoom homeless={taken.homeless} onAgain={again} />}
    </div>
  )
}
