import { callWords, who } from '../../state/access.ts'
import { FIELDS } from './fields.ts'
import { SecretForm } from './SecretForm.tsx'
import { WORDS } from './words.ts'

/** Runs a call that lets this browser in, and begins anew with what the server then gives. */
export const thenReload = async (call: Promise<string | null>): Promise<string | null> => {
  const wrong = await call
  if (wrong === null) location.assign('/')
  return wrong
}

/** Makes the manager's account, with the code where this is not the server's own machine. */
export const SetUp = (props: { readonly withCode: boolean }) => (
  <SecretForm
    fields={[...(props.withCode ? [FIELDS.code] : []), FIELDS.newName, FIELDS.newPassword]}
    button={WORDS.make}
    onSend={({ code, name = '', password = '' }) =>
      thenReload(callWords('setUp', { body: { name, password, ...(code === undefined ? {} : { code }) } }))
    }
  />
)

/** What stands before the app where the server asks who this is. */
export const Door = () => {
  const needsSetUp = who.value?.needsSetUp === true
  return (
    <div class="stack">
      <h1>{needsSetUp ? WORDS.setUp : WORDS.closed}</h1>
      <p>{needsSetUp ? WORDS.setUpLead : WORDS.closedLead}</p>
      {needsSetUp ? (
        <SetUp withCode />
      ) : (
        <SecretForm
          fields={[FIELDS.name, FIELDS.password]}
          button={WORDS.logIn}
          onSend={({ name = '', password = '' }) =>
            thenReload(callWords('logIn', { body: { name, password } }))
          }
        />
      )}
    </div>
  )
}
