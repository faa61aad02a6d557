import type { Green, PrescriptionGroup } from '@swardwright/engine'
import { sectionDrawing, SECTION_STATES, type SectionState } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { isWide } from '../../shell/wide.ts'
import { units } from '../../state/course.ts'
import { sectionOf } from './section-of.ts'
import { WORDS } from './words.ts'

type Of = { readonly green: Green; readonly group: PrescriptionGroup | null }

const OneState = (
  props: Of & { readonly state: SectionState; readonly onTold: (told: string | null) => void },
) => {
  const drawing = sectionDrawing(
    sectionOf(props.green, props.group, props.state, {
      pxPerMm: isWide.value ? 3.6 : 2.4,
      units: units.value,
      margin: !isWide.value || props.state === 'after' ? 'figures' : 'none',
    }),
  )
  return (
    <figure>
      <DrawingView
        drawing={drawing}
        class="section"
        touchable={['layer', 'thatch', 'unmeasured', 'hole', 'groove', 'surfaceSand']}
        onTouch={(touched) => props.onTold(touched.words)}
      />
      {isWide.value ? <figcaption class="quiet small">{WORDS.sectionStates[props.state]}</figcaption> : null}
    </figure>
  )
}

const Slider = (props: { readonly state: SectionState; readonly onState: (state: SectionState) => void }) => (
  <div>
    <input
      type="range"
      min={0}
      max={SECTION_STATES.length - 1}
      step={1}
      value={SECTION_STATES.indexOf(props.state)}
      aria-label={WORDS.slider}
      aria-valuetext={WORDS.sectionStates[props.state]}
      onInput={(event) => {
        const state = SECTION_STATES[Number(event.currentTarget.value)]
        if (state !== undefined) props.onState(state)
      }}
    />
    <div class="slider-words small" aria-hidden="true">
      {SECTION_STATES.map((state) => (
        <span key={state} class={state === props.state ? '' : 'quiet'}>
          {WORDS.sectionStates[state]}
        </span>
      ))}
    </div>
  </div>
)

/** The cut through the green: before and after side by side where there is room, under a slider on a phone. */
export const Section = (props: Of) => {
  const [state, setState] = useState<SectionState>('after')
  const [told, setTold] = useState<string | null>(null)
  return (
    <div class="stack">
      {isWide.value ? (
        <div class="two-cuts">
          <OneState {...props} state="before" onTold={setTold} />
          <OneState {...props} state="after" onTold={setTold} />
        </div>
      ) : (
        <>
          <OneState {...props} state={state} onTold={setTold} />
          <Slider state={state} onState={setState} />
        </>
      )}
      <p role="status" class={told === null ? 'quiet small' : 'told'}>
        {told ?? WORDS.touchHint}
      </p>
      {props.green.organicTests.length === 0 ? <p class="small">{WORDS.notTested}</p> : null}
    </div>
  )
}
