import { useState } from 'preact/hooks'
import { isPartMissing, loadAnew } from '../state/missing-part.ts'

const WORDS = {
  missing: 'A part of the app could not be fetched, so some answers do not come.',
  still: 'The server still does not answer. What you recorded is safe on this device.',
  again: 'Try again',
} as const

/** Says that a part of the engine did not come, and loads the app anew when asked. */
export const MissingPart = () => {
  const [isAway, setIsAway] = useState(false)
  return isPartMissing.value ? (
    <div class="new-version" role="status">
      <span>{isAway ? WORDS.still : WORDS.missing}</span>
      <button type="button" onClick={() => void loadAnew().then((began) => setIsAway(!began))}>
        {WORDS.again}
      </button>
    </div>
  ) : null
}
