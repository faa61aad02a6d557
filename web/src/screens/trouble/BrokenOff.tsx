import { BREAK_REASONS } from '@swardwright/present'
import { PickOne } from '../../parts/PickOne.tsx'
import type { Covering } from '../../compute/covering.ts'
import { touch } from '../../state/undo.ts'
import { WORDS } from './words.ts'

/** A step was begun and is broken off: why, in one press. What is left of it is planned for later. */
export const BrokenOff = (props: {
  readonly covering: Covering
  /** The step and its green, in words. */
  readonly words: string
  readonly close: () => void
}) => (
  <div class="stack">
    <p>
      {props.words}. {WORDS.whyBroken}
    </p>
    <PickOne
      options={BREAK_REASONS}
      onPick={(id) => {
        const why = BREAK_REASONS.find((reason) => reason.id === id)?.id ?? 'other'
        props.close()
        void touch('taskStopped', { ...props.covering, why }, `${props.words}: ${WORDS.brokenOff}`)
      }}
    />
  </div>
)
