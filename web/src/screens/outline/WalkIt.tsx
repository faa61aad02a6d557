import { lonLat } from '@swardwright/engine'
import { decimal, quantityWords } from '@swardwright/present'
import { useEffect, useRef, useState } from 'preact/hooks'
import { Fact } from '../../parts/Figure.tsx'
import { Note } from '../../parts/Note.tsx'
import { units } from '../../state/course.ts'
import { pairOf, planeOf, type Pair } from './draft.ts'
import { endOfWalk, lengthsOf, NO_WALK, withFix, type Walk } from './walk-track.ts'
import { WORDS } from './words.ts'

type State = 'still' | 'walking' | 'paused'

const metres = (lengthM: number): string => quantityWords('distance', lengthM, units.value)

/** Keeps the screen on while somebody walks, where the browser can; without it phones stop telling their position. */
const useScreenOn = (isOn: boolean): void => {
  useEffect(() => {
    if (!isOn || !('wakeLock' in navigator)) return undefined
    const lock = navigator.wakeLock.request('screen').catch(() => null)
    return () => void lock.then((held) => held?.release())
  }, [isOn])
}

/** Follows the phone's position while `isOn`. */
const usePosition = (
  isOn: boolean,
  on: { readonly fix: (place: GeolocationPosition) => void; readonly fault: (denied: boolean) => void },
): void => {
  const handlers = useRef(on)
  handlers.current = on
  useEffect(() => {
    if (!isOn) return undefined
    const watch = navigator.geolocation.watchPosition(
      (place) => handlers.current.fix(place),
      (error) => handlers.current.fault(error.code === error.PERMISSION_DENIED),
      { enableHighAccuracy: true, maximumAge: 0, timeout: 30_000 },
    )
    return () => navigator.geolocation.clearWatch(watch)
  }, [isOn])
}

const WalkFacts = ({ walk }: { readonly walk: Walk }) => {
  const { walkedM, toStartM } = lengthsOf(walk)
  return (
    <dl class="facts large" aria-live="off">
      <Fact word={WORDS.accuracy}>
        {walk.accuracyM === null ? '…' : `± ${decimal(Math.ceil(walk.accuracyM), 0)} m`}
      </Fact>
      <Fact word={WORDS.walked}>{metres(walkedM)}</Fact>
      <Fact word={WORDS.toStart}>{metres(toStartM)}</Fact>
      <Fact word={WORDS.fixes} {...(walk.rough === 0 ? {} : { range: `${walk.rough} ${WORDS.left}` })}>
        {walk.fixes.length}
      </Fact>
    </dl>
  )
}

/** The walk itself, on a device that tells its position. */
const Walking = (props: {
  readonly middle: Pair
  readonly onWalked: (walked: readonly Pair[]) => void
  readonly onOuter: (outer: readonly Pair[]) => void
}) => {
  const plane = planeOf(props.middle)
  const [state, setState] = useState<State>('still')
  const [walk, setWalk] = useState(NO_WALK)
  const [fault, setFault] = useState<string | null>(null)
  const [end, setEnd] = useState<string | null>(null)
  useScreenOn(state === 'walking')
  usePosition(state === 'walking', {
    fix: ({ coords }) => {
      const place = lonLat(coords.longitude, coords.latitude)
      if (!place.ok) return
      setFault(null)
      const next = withFix(walk, { point: plane.toLocal(place.value), accuracyM: coords.accuracy })
      setWalk(next)
      props.onWalked(next.fixes.map((fix) => pairOf(plane.toLonLat(fix))))
    },
    fault: (denied) => {
      setFault(denied ? WORDS.denied : WORDS.lost)
      if (denied) setState('still')
    },
  })
  const stop = () => {
    setState('still')
    setWalk(NO_WALK)
    setFault(null)
    props.onWalked([])
  }
  const finish = () => {
    const done = endOfWalk(walk.fixes)
    if (!done.ok) {
      const { error } = done
      setFault(
        error.type === 'tooFewFixes'
          ? WORDS.walkedError.tooFewFixes(error.fixes, error.needed)
          : WORDS.walkedError.notClosed(metres(error.closingErrorM), metres(error.maxClosingErrorM)),
      )
      return
    }
    setEnd(WORDS.closing(`${decimal(done.closingErrorM, 1)} m`, done.droppedFixes))
    props.onOuter(done.ring.map((point) => pairOf(plane.toLonLat(point))))
    stop()
  }
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.walkLead}</p>
      {state === 'still' ? (
        <button
          type="button"
          class="primary"
          onClick={() => {
            setEnd(null)
            setFault(null)
            setState('walking')
          }}
        >
          {WORDS.start}
        </button>
      ) : (
        <>
          {walk.accuracyM === null ? <p role="status">{WORDS.waiting}</p> : <WalkFacts walk={walk} />}
          <div class="row">
            <button type="button" class="primary" onClick={finish}>
              {WORDS.finish}
            </button>
            <button type="button" onClick={() => setState(state === 'walking' ? 'paused' : 'walking')}>
              {state === 'walking' ? WORDS.pause : WORDS.goOn}
            </button>
            <button type="button" class="plain" onClick={stop}>
              {WORDS.giveUp}
            </button>
          </div>
        </>
      )}
      {fault === null ? null : (
        <Note kind="ochre" word="Mind:" live>
          {fault}
        </Note>
      )}
      {end === null ? null : (
        <Note kind="leaf" word="Walked:" live>
          {end}
        </Note>
      )}
    </div>
  )
}

/** Walking the edge with a phone; says plainly where a phone won't tell its position. */
export const WalkIt = (props: Parameters<typeof Walking>[0]) => {
  if (!isSecureContext)
    return (
      <Note kind="ochre" word="Not here:">
        {WORDS.insecure}
      </Note>
    )
  return 'geolocation' in navigator ? <Walking {...props} /> : <p>{WORDS.noPosition}</p>
}
