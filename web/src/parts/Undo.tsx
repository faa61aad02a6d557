import { lastTouch, undoTouch } from '../state/undo.ts'

/** What was written down last by one touch, with the way back. */
export const Undo = () => {
  const last = lastTouch.value
  return (
    <div role="status">
      {last === null ? null : (
        <div class="undo">
          <span>{last.words}</span>
          <button type="button" onClick={() => void undoTouch()}>
            Undo
          </button>
        </div>
      )}
    </div>
  )
}
