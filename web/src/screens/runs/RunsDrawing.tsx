import { useEffect, useMemo, useState } from 'preact/hooks'
import { groundDrawing } from '@swardwright/present'
import type { RunsTold } from '../../compute/runs-told.ts'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { Choice } from '../../parts/fields.tsx'
import { isWide } from '../../shell/wide.ts'
import { stepWords } from './told.ts'
import { WORDS } from './words.ts'

const WIDTH_PX = { wide: 620, narrow: 358 } as const

/** Time that one run is shown for while it is being driven, ms. */
const SHOWN_MS = 650

const wantsStillness = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches

/** Counts up one run after the other while it is on, and stops at the last. */
const usePlaying = (runs: number, drivenTo: number | null, onDriven: (run: number | null) => void) => {
  const [isOn, setOn] = useState(false)
  useEffect(() => {
    if (!isOn) return undefined
    const timer = setTimeout(() => {
      const next = (drivenTo ?? 0) + 1
      if (next >= runs) setOn(false)
      onDriven(Math.min(runs, next))
    }, SHOWN_MS)
    return () => clearTimeout(timer)
  }, [isOn, drivenTo, runs])
  return [isOn, setOn] as const
}

const Stepper = (props: {
  readonly told: RunsTold
  readonly pass: number
  readonly drivenTo: number | null
  readonly onDriven: (run: number | null) => void
}) => {
  const { told, drivenTo, onDriven } = props
  const pass = told.told[props.pass]
  const runs = pass?.passes.runs.length ?? 0
  const [isOn, setOn] = usePlaying(runs, drivenTo, onDriven)
  if (pass === undefined) return null
  const words = stepWords(told, pass, drivenTo)
  const to = (run: number | null) => {
    setOn(false)
    onDriven(run)
  }
  return (
    <div class="no-print">
      <input
        type="range"
        min={1}
        max={runs}
        step={1}
        value={drivenTo ?? runs}
        aria-label={WORDS.step}
        aria-valuetext={words}
        onInput={(event) => to(Number(event.currentTarget.value))}
      />
      <p class="told" role="status">
        {words}
      </p>
      <div class="row after-told">
        <button type="button" class="thin" onClick={() => to(Math.max(1, (drivenTo ?? runs) - 1))}>
          {WORDS.before}
        </button>
        <button type="button" class="thin" onClick={() => to(Math.min(runs, (drivenTo ?? 0) + 1))}>
          {WORDS.next}
        </button>
        {wantsStillness() ? null : (
          <button
            type="button"
            class="thin"
            onClick={() => {
              if (!isOn && (drivenTo === null || drivenTo >= runs)) onDriven(0)
              setOn(!isOn)
            }}
          >
            {isOn ? WORDS.pause : WORDS.play}
          </button>
        )}
        {drivenTo === null ? null : (
          <button type="button" class="thin" onClick={() => to(null)}>
            {WORDS.whole}
          </button>
        )}
      </div>
    </div>
  )
}

/** The green with the runs of one pass in their order; a still picture until somebody asks to see it driven. */
export const RunsDrawing = (props: {
  readonly name: string
  readonly told: RunsTold
  readonly twelveDeg: number
  readonly pass: number
  readonly onPass: (pass: number) => void
}) => {
  const { told, pass } = props
  const [drivenTo, setDrivenTo] = useState<number | null>(null)
  useEffect(() => setDrivenTo(null), [told, pass])
  const widthPx = isWide.value ? WIDTH_PX.wide : WIDTH_PX.narrow
  const drawing = useMemo(() => {
    const shown = [pass, ...told.told.map((_, k) => k).filter((k) => k !== pass)]
    return groundDrawing({
      name: props.name,
      polygon: told.polygon,
      passes: shown.flatMap((k) => {
        const one = told.told[k]
        return one === undefined ? [] : [{ runs: one.passes, widthM: told.settings.widthM, pass: k }]
      }),
      ...(pass === 0 && told.sand !== null ? { loads: told.sand.loads } : {}),
      twelveDeg: props.twelveDeg,
      isApproximate: told.isApproximate,
      bunkers: told.bunkers.map((bunker) => bunker.ring),
      ...(drivenTo === null ? {} : { drivenTo }),
      widthPx,
    })
  }, [told, pass, drivenTo, widthPx, props.name, props.twelveDeg])
  return (
    <div class="stack">
      {told.told.length < 2 ? null : (
        <Choice
          label={WORDS.pass}
          value={String(pass)}
          options={told.told.map((_, k) => ({ value: String(k), label: WORDS.passes[k] ?? String(k + 1) }))}
          onValue={(value) => props.onPass(Number(value))}
        />
      )}
      <DrawingView drawing={drawing} />
      <Stepper told={told} pass={pass} drivenTo={drivenTo} onDriven={setDrivenTo} />
    </div>
  )
}
