import { useState } from 'preact/hooks'
import type { Role, RouteOutput } from '@swardwright/journal'
import { Choice } from '../../parts/fields.tsx'
import { Note } from '../../parts/Note.tsx'
import { Part } from '../../parts/Page.tsx'
import { callServer } from '../../journal/server.ts'
import { wordsOf } from '../../state/access.ts'
import { Code } from './Code.tsx'
import { SecretForm } from './SecretForm.tsx'
import { ROLE_WORDS, WORDS } from './words.ts'

/** The link that a token makes. It stands behind #, so that no server and no log on the way ever sees it. */
const linkOf = (token: string): string => `${location.origin}/join#${token}`

const isLocalName = (host: string): boolean =>
  host === 'localhost' || host === '[::1]' || host.startsWith('127.')

const Ready = (props: { readonly link: string; readonly name: string }) => {
  const [copied, setCopied] = useState(false)
  const copy = async () => {
    await navigator.clipboard.writeText(props.link)
    setCopied(true)
  }
  return (
    <div class="stack" role="status">
      <p>
        <b>{props.name}</b>: {WORDS.linkReady}
      </p>
      <Code text={props.link} label={`${WORDS.letIn}: ${props.name}`} />
      <input type="text" readOnly value={props.link} aria-label={WORDS.copy} />
      {'clipboard' in navigator ? (
        <button type="button" class="thin" onClick={() => void copy()}>
          {copied ? WORDS.copied : WORDS.copy}
        </button>
      ) : null}
    </div>
  )
}

/** Makes a link for one device, shown once as a code and as text. */
export const Invite = (props: { readonly roles: readonly Role[]; readonly onMade: () => void }) => {
  const [role, setRole] = useState<Role>('crew')
  const [made, setMade] = useState<(RouteOutput<'addLink'> & { readonly name: string }) | null>(null)
  const make = async (name: string): Promise<string | null> => {
    const answer = await callServer('addLink', { body: { name, role } })
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
        {isLocalName(location.hostname) ? (
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
