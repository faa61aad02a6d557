import { useState } from 'preact/hooks'
import type { RouteOutput } from '@swardwright/journal'
import { Choice } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Part } from '../../parts/Page.tsx'
import { callWords } from '../../state/access.ts'
import { FIELDS } from './fields.ts'
import { SecretForm } from './SecretForm.tsx'
import { ROLE_WORDS, WORDS } from './words.ts'

type People = RouteOutput<'people'>
type Row = People['accounts'][number] & { readonly until?: string }

/** A day as a list shows it. */
const day = (moment: string): string =>
  new Date(moment).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })

const List = (props: {
  readonly title: string
  readonly rows: readonly Row[]
  readonly button: string
  readonly onEnd: (id: string) => void
}) => (
  <Part title={props.title}>
    {props.rows.length === 0 ? <p class="quiet">{WORDS.none}</p> : null}
    <ul class="rows">
      {props.rows.map((row) => (
        <li key={row.id}>
          <div class="line">
            <span class="name">{row.name}</span>
            <span class="rest small">
              {ROLE_WORDS[row.role].name.toLowerCase()}, since {day(row.since)}
              {row.until === undefined ? '' : `, until ${day(row.until)}`}
            </span>
            <button
              type="button"
              class="thin"
              aria-label={`${props.button} ${row.name}`}
              onClick={() => props.onEnd(row.id)}
            >
              {props.button}
            </button>
          </div>
        </li>
      ))}
    </ul>
  </Part>
)

const ACCOUNT_ROLES = ['deputy', 'committee', 'manager'] as const

const NewAccount = (props: { readonly onMade: () => void }) => {
  const [role, setRole] = useState<(typeof ACCOUNT_ROLES)[number]>('deputy')
  const make = async (name: string, password: string): Promise<string | null> => {
    const wrong = await callWords('addAccount', { body: { name, role, password } })
    if (wrong === null) props.onMade()
    return wrong
  }
  return (
    <Fold summary={WORDS.another}>
      {() => (
        <>
          <p class="small quiet">{WORDS.anotherLead}</p>
          <Choice
            label={WORDS.role}
            value={role}
            options={ACCOUNT_ROLES.map((value) => ({ value, label: ROLE_WORDS[value].name }))}
            onValue={setRole}
          />
          <SecretForm
            fields={[FIELDS.newName, FIELDS.newPassword]}
            button={WORDS.make}
            onSend={({ name = '', password = '' }) => make(name, password)}
          />
        </>
      )}
    </Fold>
  )
}

/** Everybody else who may come in, each with a button that ends it. */
export const Others = (props: {
  readonly people: People
  readonly mayMakeAccounts: boolean
  readonly onChange: () => void
  readonly onWrong: (words: string | null) => void
}) => {
  const end = async (id: string) => {
    props.onWrong(await callWords('endAccess', { params: { id } }))
    props.onChange()
  }
  const list = { onEnd: (id: string) => void end(id) }
  return (
    <>
      <List {...list} title={WORDS.devices} rows={props.people.devices} button={WORDS.revoke} />
      {props.people.links.length === 0 ? null : (
        <List {...list} title={WORDS.links} rows={props.people.links} button={WORDS.takeBack} />
      )}
      <List {...list} title={WORDS.accounts} rows={props.people.accounts} button={WORDS.end} />
      {props.mayMakeAccounts ? <NewAccount onMade={props.onChange} /> : null}
    </>
  )
}
