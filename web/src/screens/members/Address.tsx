import { useEffect, useState } from 'preact/hooks'
import { dayWords } from '@swardwright/present'
import { Note } from '../../parts/Note.tsx'
import { Part } from '../../parts/Page.tsx'
import {
  askMembersPage,
  closeMembersPage,
  membersAddress,
  membersPageNow,
  openMembersPage,
} from '../../state/members-page.ts'
import { isLocalAddress, ShareAddress } from '../account/ShareAddress.tsx'
import { WORDS as ACCOUNT_WORDS } from '../account/words.ts'
import { WORDS } from './words.ts'

type Doing = (work: () => Promise<string | null>) => void

const Closed = ({ run }: { readonly run: Doing }) => (
  <>
    <p>{WORDS.closed}</p>
    <p class="small quiet">{WORDS.openLead}</p>
    <button type="button" class="primary" onClick={() => run(openMembersPage)}>
      {WORDS.open}
    </button>
  </>
)

const Opened = ({ since, run }: { readonly since: string; readonly run: Doing }) => {
  const address = membersAddress()
  return (
    <>
      <p>
        {WORDS.isOpen} {dayWords(since.slice(0, 10))}.
      </p>
      {address === null ? (
        <p>{WORDS.elsewhere}</p>
      ) : (
        <>
          {isLocalAddress() ? (
            <Note kind="ochre" word="Care:">
              {ACCOUNT_WORDS.localOnly}
            </Note>
          ) : null}
          <ShareAddress key={address} address={address} label={WORDS.title} />
          <p>
            <a href={address} target="_blank" rel="noreferrer">
              {WORDS.toPage}
            </a>
          </p>
        </>
      )}
      <div class="row">
        <button type="button" onClick={() => run(openMembersPage)}>
          {WORDS.renew}
        </button>
        <button type="button" onClick={() => run(closeMembersPage)}>
          {WORDS.close}
        </button>
      </div>
      <p class="small quiet">{WORDS.renewHint}</p>
    </>
  )
}

/** Opens and closes the page, and shows its address. Needs the server. */
export const Address = () => {
  const [wrong, setWrong] = useState<string | null>(null)
  const run: Doing = (work) => void work().then(setWrong)
  useEffect(() => run(askMembersPage), [])
  const page = membersPageNow.value
  return (
    <Part title={WORDS.address}>
      <div class="stack">
        {page === undefined ? null : page === null ? (
          <Closed run={run} />
        ) : (
          <Opened since={page.since} run={run} />
        )}
        <p class={wrong === null ? 'hint' : 'wrong'} role="status">
          {wrong ?? ''}
        </p>
      </div>
    </Part>
  )
}
