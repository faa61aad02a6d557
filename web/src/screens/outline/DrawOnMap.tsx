import { useEffect, useRef, useState } from 'preact/hooks'
import { TextField } from '../../parts/fields.tsx'
import { Note } from '../../parts/Note.tsx'
import { keepText, keptText } from '../../state/kept-text.ts'
import type { Pair } from './draft.ts'
import type { DrawingMap } from './drawing-map.ts'
import { WORDS } from './words.ts'

const KEY = 'swardwright.tiles'

const isTiles = (address: string): boolean =>
  /^https:\/\/\S+$/u.test(address) && ['{z}', '{x}', '{y}'].every((part) => address.includes(part))

type Props = {
  readonly outer: readonly Pair[]
  readonly middle: Pair
  readonly beside: readonly (readonly Pair[])[]
  readonly onOuter: (outer: readonly Pair[]) => void
}

/** The map itself, loaded only once it is asked for. */
const OpenMap = (props: Props & { readonly tiles: string }) => {
  const holder = useRef<HTMLDivElement>(null)
  const map = useRef<DrawingMap | null>(null)
  const onOuter = useRef(props.onOuter)
  onOuter.current = props.onOuter
  const [state, setState] = useState<'opening' | 'open' | 'failed'>('opening')
  useEffect(() => {
    let isGone = false
    const open = async () => {
      const { openDrawingMap } = await import('./drawing-map.ts')
      if (isGone || holder.current === null) return
      const opened = await openDrawingMap({
        holder: holder.current,
        name: WORDS.mapName,
        outer: props.outer,
        middle: props.middle,
        beside: props.beside,
        tiles: isTiles(props.tiles) ? props.tiles : null,
        onOuter: (outer) => onOuter.current(outer),
      })
      if (isGone) return opened.close()
      map.current = opened
      setState('open')
    }
    setState('opening')
    open().catch(() => setState('failed'))
    return () => {
      isGone = true
      map.current?.close()
      map.current = null
    }
  }, [props.tiles])
  useEffect(() => map.current?.show(props.outer), [props.outer])
  return (
    <>
      {state === 'opening' ? <p role="status">{WORDS.openingMap}</p> : null}
      {state === 'failed' ? (
        <Note kind="ochre" word="No map:" live>
          {WORDS.mapFailed}
        </Note>
      ) : null}
      <div ref={holder} class="draw-map" hidden={state === 'failed'} data-state={state} />
      {state === 'open' ? (
        <button type="button" class="thin" onClick={() => map.current?.drawNew()}>
          {WORDS.drawNew}
        </button>
      ) : null}
    </>
  )
}

/** Drawing by hand on plain paper, or on picture tiles whose address somebody typed in. */
export const DrawOnMap = (props: Props) => {
  const [isOpen, setOpen] = useState(false)
  const [tiles, setTiles] = useState(() => keptText(KEY) ?? '')
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.drawLead}</p>
      {isOpen ? (
        <OpenMap key={tiles} {...props} tiles={tiles} />
      ) : (
        <button type="button" class="primary" onClick={() => setOpen(true)}>
          {WORDS.openMap}
        </button>
      )}
      <TextField
        label={WORDS.tiles}
        hint={WORDS.tilesHint}
        value={tiles}
        check={(text) => (text.trim() === '' || isTiles(text.trim()) ? null : WORDS.tilesWrong)}
        onValue={(text) => {
          keepText(KEY, text.trim())
          setTiles(text.trim())
        }}
      />
    </div>
  )
}
