import { useState } from 'preact/hooks'
import type { Role, RouteOutput } from '@swardwright/journal'
import { Choice } from '../../parts/fields.tsx'
import { Note } from '../../parts/Note.tsx'
import { Part } from '../../parts/Page.tsx'
import { callServer } from '../../journal/server.ts'
import { wordsOf } from '../../state/access.ts'
import { courseId } from '../../state/journal.ts'
import { SecretForm } from './SecretForm.tsx'
import { isLocalAddress, ShareAddress } from './ShareAddress.tsx'
import { ROLE_WORDS, WORDS } from './words.ts'

/** The link that a token makes. It stands behind #, so that no server and no log on the way ever sees it. */
const linkOf = (token: string): string => `${location.origin}/join#${token}`

const Ready = (props: { readonly link: string; readonly name: string }) => (
  <div class="stack" role="status">
    <p>
      <b>{props.name}</b>: {WORDS.linkReady}
    </p>
    <ShareAddress address={props.link} label={`${WORDS.letIn}: ${props.name}`} />
  </div>
)

/** Makes a link for one device, shown once as a code and as text. */
export const Invite = (props: { readonly roles: readonly Role[]; readonly onMade: () => void }) => {
  const [role, setRole] = useState<Role>('crew')
  const [made, setMade] = useState<(RouteOutput<'addLink'> & { readonly name: string }) | null>(null)
  const make = async (name: string): Promise<string | null> => {
    const answer = await callServer('addLink', {
      body: { name, role, ...(courseId.value === null ? {} : { course: courseId.value }) },
    })
    if (answer.ok) {
      setMade({ ...answer.value, name })
      props.onMade()
    }
    return wordsOf(answer)
  }
  return (
    <Part title={WORDS.letIn}>
      <div class="stack">
        <p class="small quiet">{WORDS.letInLead}</p>
        {isLocalAddress() ? (
          <Note kind="ochre" word="Care:">
            {WORDS.localOnly}
          </Note>
        ) : null}
        <Choice
          label={WORDS.role}
          value={role}
          options={props.roles.map((value) => ({ value, label: ROLE_WORDS[value].name }))}
          onValue={setRole}
        />
        <p class="small quiet">{ROLE_WORDS[role].may}</p>
        <SecretForm
          fields={[{ name: 'name', label: WORDS.device, hint: WORDS.nameHint, autoComplete: 'off' }]}
          button={WORDS.makeLink}
          onSend={({ name = '' }) => make(name)}
        />
        {made === null ? null : <Ready key={made.id} link={linkOf(made.token)} name={made.name} />}
      </div>
    </Part>
  )
}
