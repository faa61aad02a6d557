import { useId, useState } from 'preact/hooks'
import { membersNotice } from '@swardwright/present'
import { Part } from '../../parts/Page.tsx'
import { facts } from '../../state/journal.ts'
import { record } from '../../state/record.ts'
import { touch } from '../../state/undo.ts'
import { WORDS } from './words.ts'

const LONGEST = 600

/** The manager’s own words on the page: nothing stands there until the button is pressed. */
export const Notice = () => {
  const id = useId()
  const [text, setText] = useState('')
  const words = text.trim()
  const shown = membersNotice(facts.value)
  return (
    <Part title={WORDS.notice}>
      <div class="stack">
        <div class="field">
          <label for={id}>{WORDS.notice}</label>
          <textarea
            id={id}
            rows={4}
            maxLength={LONGEST}
            value={text}
            aria-describedby={`${id}-hint`}
            onInput={(event) => setText(event.currentTarget.value)}
          />
          <p id={`${id}-hint`} class="hint">
            {WORDS.noticeHint}
          </p>
        </div>
        <div class="row">
          <button
            type="button"
            disabled={words === ''}
            onClick={() =>
              void touch('noticeSent', { audience: 'members', way: 'page', words }, WORDS.putUpDone).then(
                () => setText(''),
              )
            }
          >
            {WORDS.putUp}
          </button>
          {shown === null ? null : (
            <button
              type="button"
              onClick={() => void record('struck', { entry: shown.entry, reason: WORDS.takeOff })}
            >
              {WORDS.takeOff}
            </button>
          )}
        </div>
      </div>
    </Part>
  )
}
