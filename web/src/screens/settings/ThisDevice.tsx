import { useEffect } from 'preact/hooks'
import { plainHttpLacks } from '../../state/access.ts'
import { appKept } from '../../state/app-version.ts'
import { keepsEntries } from '../../state/journal.ts'
import { askToLast, lasting, readLasting } from '../../state/storage.ts'
import { SyncLine } from '../../shell/SyncLine.tsx'
import { DEVICE_WORDS } from './words.ts'

/** What this device keeps, what the browser promises for it, and what the server does not have yet. */
export const ThisDevice = () => {
  useEffect(() => void readLasting(), [])
  const app = appKept.value === null ? plainHttpLacks(isSecureContext) : DEVICE_WORDS.app[appKept.value]
  return (
    <div class="stack" id="device">
      <p>{app ?? DEVICE_WORDS.appNever}</p>
      <p>{keepsEntries.value ? DEVICE_WORDS.lasting[lasting.value] : DEVICE_WORDS.keepsNothing}</p>
      {keepsEntries.value && isSecureContext && lasting.value !== 'lasting' ? (
        <button type="button" onClick={() => void askToLast()}>
          {DEVICE_WORDS.ask}
        </button>
      ) : null}
      <SyncLine />
    </div>
  )
}
