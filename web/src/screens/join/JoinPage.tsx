import { useState } from 'preact/hooks'
import { Note } from '../../parts/Note.tsx'
import { callWords, plainHttpLacks } from '../../state/access.ts'
import { forgetCourse } from '../../state/open.ts'
import { WORDS } from '../account/words.ts'

/** What stands behind # in the link. */
const tokenIn = (hash: string): string | null => /^#([\w-]{20,200})$/u.exec(hash)?.[1] ?? null

/** Where a join link leads: one tap, and this device is in. */
export const JoinPage = () => {
  const [token] = useState(() => tokenIn(location.hash))
  const [wrong, setWrong] = useState<string | null>(token === null ? WORDS.joinNone : null)
  const [isBusy, setBusy] = useState(false)
  const lacks = plainHttpLacks(isSecureContext)
  const join = async (given: string) => {
    setBusy(true)
    const words = await callWords('join', { body: { token: given } })
    if (words === null) {
      await forgetCourse()
      location.replace('/')
    }
    setWrong(words)
    setBusy(false)
  }
  return (
    <main class="page" id="page">
      <div class="stack">
        <h1>{WORDS.join}</h1>
        <p>{WORDS.joinLead}</p>
        {lacks === null ? null : (
          <Note kind="ochre" word="Care:">
            {lacks}
          </Note>
        )}
        {wrong === null ? null : (
          <p class="wrong" role="status">
            {wrong}
          </p>
        )}
        {token === null ? null : (
          <button type="button" class="primary" disabled={isBusy} onClick={() => void join(token)}>
            {WORDS.joinNow}
          </button>
        )}
      </div>
    </main>
  )
}
